CREATE TABLE `known_sample_trial_withdrawal` (
	`id` text PRIMARY KEY NOT NULL,
	`trial_id` text NOT NULL,
	`reason` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`trial_id`) REFERENCES `known_sample_trial`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `known_sample_trial_withdrawal_trial` ON `known_sample_trial_withdrawal` (`trial_id`);--> statement-breakpoint
CREATE TABLE `second_reading` (
	`id` text PRIMARY KEY NOT NULL,
	`conclusion_id` text NOT NULL,
	`person_id` text NOT NULL,
	`outcome` text,
	`at` text NOT NULL,
	FOREIGN KEY (`conclusion_id`) REFERENCES `conclusion`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `second_reading_conclusion_person` ON `second_reading` (`conclusion_id`,`person_id`);--> statement-breakpoint
DROP INDEX `known_sample_trial_stone`;--> statement-breakpoint
ALTER TABLE `known_sample_trial` ADD `instrument_ids` text;--> statement-breakpoint
CREATE INDEX `known_sample_trial_stone` ON `known_sample_trial` (`stone_id`);--> statement-breakpoint
ALTER TABLE `instrument_check` ADD `after_service` integer;--> statement-breakpoint
ALTER TABLE `known_sample_withdrawal` ADD `origin_wrong` integer;