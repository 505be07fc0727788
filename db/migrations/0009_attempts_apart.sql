CREATE TABLE `wrong_attempts` (
	`id` text PRIMARY KEY NOT NULL,
	`failures` integer NOT NULL,
	`failed_at` text NOT NULL
) STRICT;
--> statement-breakpoint
ALTER TABLE `credential` DROP COLUMN `failures`;--> statement-breakpoint
ALTER TABLE `credential` DROP COLUMN `failed_at`;