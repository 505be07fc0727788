CREATE TABLE `search_entry` (
	`row` integer PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`id` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `search_entry_kind_id` ON `search_entry` (`kind`,`id`);
--> statement-breakpoint
-- Runs of three characters: found in the middle of a word too. Texts are folded before they come in (db/search/search-words.ts).
CREATE VIRTUAL TABLE `search_client` USING fts5(own, around, content='', contentless_delete=1, tokenize='trigram case_sensitive 1');
--> statement-breakpoint
CREATE VIRTUAL TABLE `search_case` USING fts5(own, around, content='', contentless_delete=1, tokenize='trigram case_sensitive 1');
--> statement-breakpoint
CREATE VIRTUAL TABLE `search_stone` USING fts5(own, around, content='', contentless_delete=1, tokenize='trigram case_sensitive 1');
--> statement-breakpoint
CREATE VIRTUAL TABLE `search_report` USING fts5(own, around, content='', contentless_delete=1, tokenize='trigram case_sensitive 1');
