CREATE TABLE `known_sample` (
	`id` text PRIMARY KEY NOT NULL,
	`label` text NOT NULL,
	`truth` text NOT NULL,
	`basis` text NOT NULL,
	`created_at` text NOT NULL,
	`created_by` text NOT NULL,
	FOREIGN KEY (`created_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `known_sample_label` ON `known_sample` (`label`);--> statement-breakpoint
CREATE TABLE `known_sample_trial` (
	`id` text PRIMARY KEY NOT NULL,
	`sample_id` text NOT NULL,
	`stone_id` text,
	`outcome` text NOT NULL,
	`examiner_id` text NOT NULL,
	`examined_at` text NOT NULL,
	`blind` integer NOT NULL,
	`remark` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`sample_id`) REFERENCES `known_sample`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`stone_id`) REFERENCES `stone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`examiner_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `known_sample_trial_stone` ON `known_sample_trial` (`stone_id`);--> statement-breakpoint
CREATE INDEX `known_sample_trial_sample` ON `known_sample_trial` (`sample_id`);--> statement-breakpoint
CREATE TABLE `known_sample_withdrawal` (
	`id` text PRIMARY KEY NOT NULL,
	`sample_id` text NOT NULL,
	`reason` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`sample_id`) REFERENCES `known_sample`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `known_sample_withdrawal_sample` ON `known_sample_withdrawal` (`sample_id`);--> statement-breakpoint
ALTER TABLE `instrument_check` ADD `quantity` text;--> statement-breakpoint
ALTER TABLE `instrument_check` ADD `unit` text;--> statement-breakpoint
ALTER TABLE `instrument_check` ADD `value` real;--> statement-breakpoint
ALTER TABLE `instrument_check` ADD `expected` real;--> statement-breakpoint
ALTER TABLE `instrument_check` ADD `tolerance` real;--> statement-breakpoint
ALTER TABLE `confirmation` ADD `outcome` text;--> statement-breakpoint
ALTER TABLE `confirmation` ADD `read_first` integer;