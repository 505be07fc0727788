CREATE TABLE `house_text` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`version` integer NOT NULL,
	`text` text NOT NULL,
	`note` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `house_text_kind_version` ON `house_text` (`kind`,`version`);--> statement-breakpoint
CREATE TABLE `report_draft` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`content` text NOT NULL,
	`created_at` text NOT NULL,
	`created_by` text NOT NULL,
	`updated_at` text NOT NULL,
	`updated_by` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`created_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`updated_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `report_draft_case` ON `report_draft` (`case_id`);--> statement-breakpoint
CREATE TABLE `report_template` (
	`id` text PRIMARY KEY NOT NULL,
	`template_id` text NOT NULL,
	`version` integer NOT NULL,
	`content` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `report_template_template_version` ON `report_template` (`template_id`,`version`);--> statement-breakpoint
CREATE TABLE `report_withdrawal` (
	`id` text PRIMARY KEY NOT NULL,
	`report_id` text NOT NULL,
	`reason` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`report_id`) REFERENCES `report`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `report_withdrawal_report` ON `report_withdrawal` (`report_id`);--> statement-breakpoint
CREATE TABLE `signing_authorisation` (
	`id` text PRIMARY KEY NOT NULL,
	`holder_id` text NOT NULL,
	`ordinal` integer NOT NULL,
	`kinds` text NOT NULL,
	`since` text NOT NULL,
	`note` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`holder_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `signing_authorisation_holder_ordinal` ON `signing_authorisation` (`holder_id`,`ordinal`);--> statement-breakpoint
ALTER TABLE `report` ADD `subject_kind` text;--> statement-breakpoint
ALTER TABLE `report` ADD `subject_id` text;--> statement-breakpoint
ALTER TABLE `report` ADD `replaces` text;--> statement-breakpoint
ALTER TABLE `report` ADD `reason` text;