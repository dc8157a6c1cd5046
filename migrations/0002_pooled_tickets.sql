CREATE TABLE "pooled_tickets" (
	"pool" text NOT NULL,
	"id" text NOT NULL,
	"serial" text NOT NULL,
	"joined_ms" bigint,
	"first_weighed_ms" bigint,
	"second_weighed_ms" bigint,
	"heard_ms" bigint NOT NULL,
	CONSTRAINT "pooled_tickets_pool_id_pk" PRIMARY KEY("pool","id")
);
--> statement-breakpoint
CREATE INDEX "pooled_tickets_heard" ON "pooled_tickets" USING btree ("pool","heard_ms");