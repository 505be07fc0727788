CREATE TABLE `calibration` (
	`id` text PRIMARY KEY NOT NULL,
	`instrument_id` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	`check_id` text NOT NULL,
	`standard` text NOT NULL,
	`unit` text NOT NULL,
	`use` text NOT NULL,
	`error` real NOT NULL,
	`file_name` text NOT NULL,
	`file_sha256` text NOT NULL,
	`fit` text NOT NULL,
	FOREIGN KEY (`instrument_id`) REFERENCES `instrument`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`check_id`) REFERENCES `instrument_check`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `calibration_instrument` ON `calibration` (`instrument_id`,`at`);