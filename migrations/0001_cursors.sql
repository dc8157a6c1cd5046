CREATE TABLE "cursors" (
	"operation" text NOT NULL,
	"platform" text NOT NULL,
	"stream" text NOT NULL,
	"position" text NOT NULL,
	CONSTRAINT "cursors_operation_platform_stream_pk" PRIMARY KEY("operation","platform","stream")
);
