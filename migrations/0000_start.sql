CREATE TABLE "alarms" (
	"operation" text NOT NULL,
	"name" text NOT NULL,
	"due_ms" bigint NOT NULL,
	CONSTRAINT "alarms_operation_name_pk" PRIMARY KEY("operation","name")
);
--> statement-breakpoint
CREATE TABLE "facts" (
	"operation" text NOT NULL,
	"seq" bigint GENERATED ALWAYS AS IDENTITY (sequence name "facts_seq_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"id" text NOT NULL,
	"kind" text NOT NULL,
	"at_ms" bigint NOT NULL,
	"heard_ms" bigint NOT NULL,
	"cause" text NOT NULL,
	"body" jsonb NOT NULL,
	CONSTRAINT "facts_operation_seq_pk" PRIMARY KEY("operation","seq"),
	CONSTRAINT "facts_id" UNIQUE("operation","id")
);
--> statement-breakpoint
CREATE TABLE "inbox" (
	"operation" text NOT NULL,
	"platform" text NOT NULL,
	"message_id" text NOT NULL,
	"heard_ms" bigint NOT NULL,
	"body" jsonb NOT NULL,
	"parked" text,
	CONSTRAINT "inbox_operation_platform_message_id_pk" PRIMARY KEY("operation","platform","message_id")
);
--> statement-breakpoint
CREATE TABLE "lanes" (
	"operation" text NOT NULL,
	"lane" text NOT NULL,
	"not_before_ms" bigint NOT NULL,
	CONSTRAINT "lanes_operation_lane_pk" PRIMARY KEY("operation","lane")
);
--> statement-breakpoint
CREATE TABLE "operations" (
	"operation" text PRIMARY KEY NOT NULL
);
--> statement-breakpoint
CREATE TABLE "outbox" (
	"id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "outbox_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"operation" text NOT NULL,
	"lane" text NOT NULL,
	"key" text NOT NULL,
	"recipient" jsonb NOT NULL,
	"platform" text NOT NULL,
	"to" jsonb NOT NULL,
	"kind" text NOT NULL,
	"cause" text NOT NULL,
	"data" jsonb,
	"said" jsonb NOT NULL,
	"replies_to" text,
	"slot" text,
	"urgent" boolean NOT NULL,
	"not_before_ms" bigint NOT NULL,
	"expires_ms" bigint,
	"attempts" integer DEFAULT 0 NOT NULL,
	"lease_until_ms" bigint,
	"done_ms" bigint,
	"outcome" text,
	"why" text,
	"message_id" text,
	CONSTRAINT "outbox_key" UNIQUE("operation","key")
);
--> statement-breakpoint
CREATE INDEX "outbox_open" ON "outbox" USING btree ("operation","lane","id") WHERE "outbox"."done_ms" is null;--> statement-breakpoint
CREATE INDEX "outbox_slot" ON "outbox" USING btree ("operation","lane","slot","id") WHERE "outbox"."slot" is not null;