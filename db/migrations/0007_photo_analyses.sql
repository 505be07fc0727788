CREATE TABLE `photo_analysis` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`item_id` text NOT NULL,
	`kind` text NOT NULL,
	`version` text NOT NULL,
	`parameters` text NOT NULL,
	`result` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `item`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `photo_analysis_item` ON `photo_analysis` (`item_id`);--> statement-breakpoint
CREATE TABLE `photo_analysis_run` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`analysis_id` text NOT NULL,
	`stone_id` text NOT NULL,
	`run_id` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`analysis_id`) REFERENCES `photo_analysis`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`stone_id`) REFERENCES `stone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`run_id`) REFERENCES `test_run`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `photo_analysis_run_analysis` ON `photo_analysis_run` (`analysis_id`);