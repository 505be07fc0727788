CREATE TABLE `sealed_bundle` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`laboratory` text NOT NULL,
	`verdict` text NOT NULL,
	`fingerprint` text NOT NULL,
	`checked_how` text NOT NULL,
	`summary` text NOT NULL,
	`size` integer NOT NULL,
	`zip` blob NOT NULL,
	`taken_at` text NOT NULL,
	`taken_by` text NOT NULL,
	FOREIGN KEY (`taken_by`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
