ALTER TABLE "operations" ADD COLUMN "slots_until_ms" bigint;--> statement-breakpoint
CREATE INDEX "inbox_edits" ON "inbox" USING btree ("operation","platform",("body" -> 'event' ->> 'of')) WHERE "inbox"."body" -> 'event' ->> 'is' = 'edit';--> statement-breakpoint
CREATE INDEX "outbox_message" ON "outbox" USING btree ("operation","platform","message_id") WHERE "outbox"."message_id" is not null;--> statement-breakpoint
UPDATE "operations" SET "slots_until_ms" = (SELECT max("not_before_ms") FROM "outbox" WHERE "outbox"."operation" = "operations"."operation" AND "slot" IS NOT NULL);
