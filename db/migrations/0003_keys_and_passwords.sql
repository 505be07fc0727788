CREATE TABLE `checkpoint` (
	`id` text PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`statement` text NOT NULL,
	`key_id` text NOT NULL,
	`signature` text NOT NULL,
	FOREIGN KEY (`key_id`) REFERENCES `signing_key`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `credential` (
	`id` text PRIMARY KEY NOT NULL,
	`person_id` text,
	`kind` text NOT NULL,
	`salt` text NOT NULL,
	`cost_n` integer NOT NULL,
	`cost_r` integer NOT NULL,
	`cost_p` integer NOT NULL,
	`proof` text NOT NULL,
	`seal_to` text NOT NULL,
	`set_at` text NOT NULL,
	`failures` integer NOT NULL,
	`failed_at` text,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `key_wrap` (
	`id` text PRIMARY KEY NOT NULL,
	`key_id` text NOT NULL,
	`sealed_to` text NOT NULL,
	`sender` text NOT NULL,
	`sealed` text NOT NULL,
	`made_at` text NOT NULL,
	FOREIGN KEY (`key_id`) REFERENCES `signing_key`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `known_key` (
	`id` text PRIMARY KEY NOT NULL,
	`public_key` text NOT NULL,
	`laboratory` text NOT NULL,
	`checked_how` text NOT NULL,
	`added_at` text NOT NULL,
	`added_by` text NOT NULL,
	`active` integer NOT NULL,
	FOREIGN KEY (`added_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `signing_key` (
	`id` text PRIMARY KEY NOT NULL,
	`public_key` text NOT NULL,
	`created_at` text NOT NULL,
	`created_by` text,
	`reason` text NOT NULL,
	FOREIGN KEY (`created_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
