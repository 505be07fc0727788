CREATE TABLE `key_store_choice` (
	`id` text PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	`used` integer NOT NULL,
	`reason` text NOT NULL,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
ALTER TABLE `key_wrap` ADD `store` text;
