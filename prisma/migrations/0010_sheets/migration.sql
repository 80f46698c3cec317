-- Sheets that somebody is bringing in, and how the columns of theirs were matched: working tables on the desk.

-- CreateTable
CREATE TABLE "desk"."sheet" (
    "id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "put_in_at" TIMESTAMPTZ(3) NOT NULL,
    "content" TEXT NOT NULL,
    "settings" TEXT NOT NULL,
    "entry" BIGINT,

    CONSTRAINT "sheet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "desk"."sheet_columns" (
    "account_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "headings" TEXT NOT NULL,
    "settings" TEXT NOT NULL,

    CONSTRAINT "sheet_columns_pkey" PRIMARY KEY ("account_id", "kind", "headings")
);

-- CreateIndex
CREATE INDEX "sheet_account_id_idx" ON "desk"."sheet"("account_id");

GRANT SELECT, INSERT, UPDATE, DELETE ON "desk"."sheet", "desk"."sheet_columns" TO kerfbook_app;
