CREATE TABLE "owed_answers" (
	"operation" text NOT NULL,
	"key" text NOT NULL,
	"heard_ms" bigint NOT NULL,
	"body" jsonb NOT NULL,
	CONSTRAINT "owed_answers_operation_key_pk" PRIMARY KEY("operation","key")
);
