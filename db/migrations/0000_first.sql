CREATE TABLE `case_record` (
	`id` text PRIMARY KEY NOT NULL,
	`number` text NOT NULL,
	`client_id` text NOT NULL,
	`received_at` text NOT NULL,
	`due_on` text,
	`asks` text NOT NULL,
	`remarks` text NOT NULL,
	`state` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`client_id`) REFERENCES `client`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`created_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `case_number` ON `case_record` (`number`);--> statement-breakpoint
CREATE INDEX `case_state_due` ON `case_record` (`state`,`due_on`);--> statement-breakpoint
CREATE INDEX `case_client` ON `case_record` (`client_id`);--> statement-breakpoint
CREATE INDEX `case_received` ON `case_record` (`received_at`);--> statement-breakpoint
CREATE TABLE `client` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`address` text NOT NULL,
	`email` text NOT NULL,
	`phone` text NOT NULL,
	`note` text NOT NULL,
	`created_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX `client_name` ON `client` (`name`);--> statement-breakpoint
CREATE TABLE `item` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`parcel_id` text NOT NULL,
	`label` text NOT NULL,
	`kind` text NOT NULL,
	`declared` text NOT NULL,
	`declared_value` text NOT NULL,
	`gross_weight` integer,
	`weight_unit` text NOT NULL,
	`count` integer,
	`setting` text,
	`condition` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`parcel_id`) REFERENCES `parcel`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `item_case_label` ON `item` (`case_id`,`label`);--> statement-breakpoint
CREATE INDEX `item_parcel` ON `item` (`parcel_id`);--> statement-breakpoint
CREATE TABLE `parcel` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`ordinal` integer NOT NULL,
	`seal_number` text NOT NULL,
	`remarks` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `parcel_case_ordinal` ON `parcel` (`case_id`,`ordinal`);--> statement-breakpoint
CREATE TABLE `photograph` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`item_id` text,
	`stone_id` text,
	`raw_record_id` text NOT NULL,
	`caption` text NOT NULL,
	`light` text NOT NULL,
	`at` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `item`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`stone_id`) REFERENCES `stone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`raw_record_id`) REFERENCES `raw_record`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `photograph_case` ON `photograph` (`case_id`);--> statement-breakpoint
CREATE INDEX `photograph_item` ON `photograph` (`item_id`);--> statement-breakpoint
CREATE TABLE `raw_record` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sha256` text NOT NULL,
	`name` text NOT NULL,
	`media_type` text NOT NULL,
	`size` integer NOT NULL,
	`packing` text NOT NULL,
	`content` blob NOT NULL,
	`added_at` text NOT NULL,
	`added_by` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`added_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `raw_case_sha` ON `raw_record` (`case_id`,`sha256`);--> statement-breakpoint
CREATE TABLE `stone` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`item_id` text NOT NULL,
	`ordinal` integer NOT NULL,
	`label` text NOT NULL,
	`mounted` integer NOT NULL,
	`position` text NOT NULL,
	`shape` text NOT NULL,
	`weight` integer,
	`measurements` text NOT NULL,
	`colour_class` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `item`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `stone_item_ordinal` ON `stone` (`item_id`,`ordinal`);--> statement-breakpoint
CREATE INDEX `stone_case` ON `stone` (`case_id`);--> statement-breakpoint
CREATE TABLE `draft` (
	`key` text PRIMARY KEY NOT NULL,
	`content` text NOT NULL,
	`updated_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `instrument` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`methods` text NOT NULL,
	`serial` text NOT NULL,
	`place` text NOT NULL,
	`remembers` text NOT NULL,
	`check_every_days` integer NOT NULL,
	`active` integer NOT NULL,
	`created_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `instrument_check` (
	`id` text PRIMARY KEY NOT NULL,
	`instrument_id` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	`passed` integer NOT NULL,
	`reference` text NOT NULL,
	`outcome` text NOT NULL,
	FOREIGN KEY (`instrument_id`) REFERENCES `instrument`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `laboratory` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`address` text NOT NULL,
	`zone` text NOT NULL,
	`logo` blob,
	`logo_type` text,
	`is_demonstration` integer NOT NULL,
	`settings` text NOT NULL,
	`created_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `number_counter` (
	`kind` text NOT NULL,
	`year` integer NOT NULL,
	`last` integer NOT NULL,
	PRIMARY KEY(`kind`, `year`)
) STRICT;
--> statement-breakpoint
CREATE TABLE `person` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`initials` text NOT NULL,
	`roles` text NOT NULL,
	`active` integer NOT NULL,
	`created_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `analysis` (
	`id` text PRIMARY KEY NOT NULL,
	`spectrum_id` text NOT NULL,
	`pipeline` text NOT NULL,
	`tables` text NOT NULL,
	`parameters` text NOT NULL,
	`result` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`spectrum_id`) REFERENCES `spectrum`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `analysis_spectrum` ON `analysis` (`spectrum_id`);--> statement-breakpoint
CREATE TABLE `conclusion` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`stone_id` text NOT NULL,
	`ordinal` integer NOT NULL,
	`conclusion` text NOT NULL,
	`reasons` text NOT NULL,
	`proposal` text NOT NULL,
	`rules` text NOT NULL,
	`finding_ids` text NOT NULL,
	`departure` text NOT NULL,
	`person_id` text NOT NULL,
	`at` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`stone_id`) REFERENCES `stone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `conclusion_stone_ordinal` ON `conclusion` (`stone_id`,`ordinal`);--> statement-breakpoint
CREATE TABLE `confirmation` (
	`id` text PRIMARY KEY NOT NULL,
	`conclusion_id` text NOT NULL,
	`person_id` text NOT NULL,
	`agrees` integer NOT NULL,
	`reason` text NOT NULL,
	`at` text NOT NULL,
	FOREIGN KEY (`conclusion_id`) REFERENCES `conclusion`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `confirmation_conclusion` ON `confirmation` (`conclusion_id`);--> statement-breakpoint
CREATE TABLE `finding` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`stone_id` text NOT NULL,
	`run_id` text,
	`analysis_id` text,
	`origin` text NOT NULL,
	`code` text NOT NULL,
	`statement` text NOT NULL,
	`strength` text NOT NULL,
	`supports` text NOT NULL,
	`method` text NOT NULL,
	`caution` text NOT NULL,
	`source` text NOT NULL,
	`state` text NOT NULL,
	`reason` text NOT NULL,
	`decided_by` text,
	`decided_at` text,
	`created_at` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`stone_id`) REFERENCES `stone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`run_id`) REFERENCES `test_run`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`analysis_id`) REFERENCES `analysis`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`decided_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `finding_stone` ON `finding` (`stone_id`);--> statement-breakpoint
CREATE INDEX `finding_run` ON `finding` (`run_id`);--> statement-breakpoint
CREATE TABLE `run_file` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`raw_record_id` text NOT NULL,
	`outcome` text NOT NULL,
	`format` text,
	`reader` text NOT NULL,
	`warnings` text NOT NULL,
	`error` text,
	FOREIGN KEY (`run_id`) REFERENCES `test_run`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`raw_record_id`) REFERENCES `raw_record`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `run_file_run` ON `run_file` (`run_id`);--> statement-breakpoint
CREATE INDEX `run_file_raw` ON `run_file` (`raw_record_id`);--> statement-breakpoint
CREATE TABLE `spectrum` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`run_file_id` text NOT NULL,
	`ordinal` integer NOT NULL,
	`title` text NOT NULL,
	`x_unit` text NOT NULL,
	`y_unit` text NOT NULL,
	`unit_stated` integer NOT NULL,
	`points` integer NOT NULL,
	`x` blob NOT NULL,
	`y` blob NOT NULL,
	`sha256` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `test_run`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`run_file_id`) REFERENCES `run_file`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `spectrum_run` ON `spectrum` (`run_id`);--> statement-breakpoint
CREATE TABLE `test_run` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`stone_id` text NOT NULL,
	`number` integer NOT NULL,
	`method` text NOT NULL,
	`instrument_id` text,
	`instrument_state` text NOT NULL,
	`laser_nm` real,
	`temperature_k` real,
	`integration_ms` real,
	`resolution` real,
	`cautions` text NOT NULL,
	`observation` text,
	`note` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`stone_id`) REFERENCES `stone`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`instrument_id`) REFERENCES `instrument`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `run_case_number` ON `test_run` (`case_id`,`number`);--> statement-breakpoint
CREATE INDEX `run_stone` ON `test_run` (`stone_id`);--> statement-breakpoint
CREATE TABLE `audit_entry` (
	`seq` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`person_id` text,
	`operation` text NOT NULL,
	`subject` text NOT NULL,
	`case_id` text,
	`content` text NOT NULL,
	`previous` text NOT NULL,
	`hash` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX `audit_case` ON `audit_entry` (`case_id`);--> statement-breakpoint
CREATE TABLE `custody_entry` (
	`seq` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`case_id` text NOT NULL,
	`item_id` text NOT NULL,
	`person_id` text NOT NULL,
	`content` text NOT NULL,
	`previous` text NOT NULL,
	`hash` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `item`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `custody_case` ON `custody_entry` (`case_id`);--> statement-breakpoint
CREATE INDEX `custody_item` ON `custody_entry` (`item_id`);--> statement-breakpoint
CREATE INDEX `custody_returned` ON `custody_entry` (`item_id`) WHERE json_extract(content, '$.event') = 'returned';--> statement-breakpoint
CREATE INDEX `custody_compared` ON `custody_entry` (`item_id`) WHERE json_extract(content, '$.differs') IS NOT NULL;--> statement-breakpoint
CREATE INDEX `custody_differs` ON `custody_entry` (`item_id`) WHERE json_extract(content, '$.differs') = 1;--> statement-breakpoint
CREATE TABLE `report` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`number` text NOT NULL,
	`revision` integer NOT NULL,
	`model` text NOT NULL,
	`model_digest` text NOT NULL,
	`pdf` blob NOT NULL,
	`pdf_sha256` text NOT NULL,
	`issued_at` text NOT NULL,
	`issued_by` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`issued_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `report_number_revision` ON `report` (`number`,`revision`);--> statement-breakpoint
CREATE INDEX `report_case` ON `report` (`case_id`);