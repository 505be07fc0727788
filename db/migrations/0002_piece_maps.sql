CREATE TABLE `picture_view` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`photograph_id` text NOT NULL,
	`version` integer NOT NULL,
	`view` text NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`photograph_id`) REFERENCES `photograph`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `picture_view_photograph_version` ON `picture_view` (`photograph_id`,`version`);--> statement-breakpoint
CREATE TABLE `piece_map` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`item_id` text NOT NULL,
	`ordinal` integer NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `item`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `piece_map_item_ordinal` ON `piece_map` (`item_id`,`ordinal`);--> statement-breakpoint
CREATE TABLE `piece_map_version` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`map_id` text NOT NULL,
	`version` integer NOT NULL,
	`name` text NOT NULL,
	`photograph_id` text,
	`ground` text NOT NULL,
	`marks` text NOT NULL,
	`removed` integer NOT NULL,
	`at` text NOT NULL,
	`person_id` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_record`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`map_id`) REFERENCES `piece_map`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`photograph_id`) REFERENCES `photograph`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `person`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `piece_map_version_map_version` ON `piece_map_version` (`map_id`,`version`);