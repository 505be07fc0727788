CREATE TABLE `sealed_bundle_piece` (
	`id` text PRIMARY KEY NOT NULL,
	`bundle_id` text NOT NULL,
	`seq` integer NOT NULL,
	`bytes` blob NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sealed_bundle_piece_bundle_seq` ON `sealed_bundle_piece` (`bundle_id`,`seq`);--> statement-breakpoint
CREATE TABLE `sealed_case` (
	`id` text PRIMARY KEY NOT NULL,
	`bundle_id` text NOT NULL,
	`folder` text NOT NULL,
	`number` text NOT NULL,
	`client` text NOT NULL,
	`question` text NOT NULL,
	`remark` text NOT NULL,
	`parcel` text NOT NULL,
	`item` text NOT NULL,
	`stone` text NOT NULL,
	`conclusion` text NOT NULL,
	`reason` text NOT NULL,
	`answer` text NOT NULL,
	`finding` text NOT NULL,
	`note` text NOT NULL,
	`report` text NOT NULL,
	`file` text NOT NULL,
	FOREIGN KEY (`bundle_id`) REFERENCES `sealed_bundle`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sealed_case_bundle_folder` ON `sealed_case` (`bundle_id`,`folder`);--> statement-breakpoint
CREATE TABLE `sealed_facts` (
	`bundle_id` text PRIMARY KEY NOT NULL,
	`facts` text NOT NULL,
	`contradictions` text NOT NULL,
	FOREIGN KEY (`bundle_id`) REFERENCES `sealed_bundle`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE VIRTUAL TABLE `search_sealed` USING fts5(own, around, content='', contentless_delete=1, tokenize='trigram case_sensitive 1');
