-- Tables, keys and references as prisma/schema.prisma says them; then, by hand, what it cannot say. References to an
-- entry are looked at on commit, because the entry is written last; so are those of a correction to what it corrects.

-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "desk";

-- CreateTable
CREATE TABLE "entry" (
    "n" BIGINT NOT NULL,
    "prev_n" BIGINT GENERATED ALWAYS AS (nullif(n - 1, 0)) STORED,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "stated_at" TIMESTAMPTZ(3),
    "command" UUID,
    "command_digest" BYTEA,
    "actor" UUID,
    "event" TEXT NOT NULL,
    "v" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "prev" BYTEA,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "entry_pkey" PRIMARY KEY ("n")
);

-- CreateTable
CREATE TABLE "program" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "program_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "statement" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "statement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "book" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "book_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "edition" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "edition_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "confirmation" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "confirmation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "caution" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "caution_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "organisation" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "organisation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "membership_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "permission" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "permission_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "certificate_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "designation" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "designation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "assignment" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "assignment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "place" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "place_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "item" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "item_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "expected_work" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "expected_work_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rating" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "rating_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "raise" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "raise_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "card" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "line" INTEGER NOT NULL,

    CONSTRAINT "card_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "card_number" (
    "number" TEXT NOT NULL,
    "person_id" UUID NOT NULL,

    CONSTRAINT "card_number_pkey" PRIMARY KEY ("number")
);

-- CreateTable
CREATE TABLE "ending" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "ending_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "resolution" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "resolution_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "extension" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "extension_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "suspension" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "suspension_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lift" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "lift_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account_role" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "account_role_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "program_fact" (
    "id" UUID NOT NULL,
    "program_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "book_id" UUID NOT NULL,
    "first_day_of_deciding" DATE,
    "invented" BOOLEAN NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "program_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "statement_fact" (
    "id" UUID NOT NULL,
    "statement_id" UUID NOT NULL,
    "actor" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "statement_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "book_fact" (
    "id" UUID NOT NULL,
    "book_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "says" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "book_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "edition_fact" (
    "id" UUID NOT NULL,
    "edition_id" UUID NOT NULL,
    "book_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "says" TEXT NOT NULL,
    "first_day" DATE NOT NULL,
    "last_day" DATE,
    "successor" JSONB,
    "levels" JSONB NOT NULL,
    "rules" JSONB NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "edition_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "confirmation_fact" (
    "id" UUID NOT NULL,
    "confirmation_id" UUID NOT NULL,
    "edition_id" UUID NOT NULL,
    "rule" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "day" DATE NOT NULL,
    "read" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "confirmation_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "caution_fact" (
    "id" UUID NOT NULL,
    "caution_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "caution_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "organisation_fact" (
    "id" UUID NOT NULL,
    "organisation_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "organisation_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person_fact" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "birth_date" DATE,
    "of_age_from" DATE,
    "attested_by" TEXT,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "person_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership_fact" (
    "id" UUID NOT NULL,
    "membership_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "organisation_id" UUID NOT NULL,
    "unit_id" UUID,
    "capacity" TEXT NOT NULL,
    "first_day" DATE,
    "last_day" DATE,
    "attested_by" TEXT,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "membership_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "permission_fact" (
    "id" UUID NOT NULL,
    "permission_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "says" TEXT NOT NULL,
    "first_day" DATE NOT NULL,
    "last_day" DATE,
    "attested_by" TEXT,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "permission_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate_fact" (
    "id" UUID NOT NULL,
    "certificate_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "subject" TEXT NOT NULL,
    "issued_by" TEXT,
    "delivery" TEXT NOT NULL,
    "first_day" DATE,
    "last_day" DATE,
    "seen" BOOLEAN NOT NULL,
    "by" TEXT,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "certificate_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "designation_fact" (
    "id" UUID NOT NULL,
    "designation_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "book_id" UUID NOT NULL,
    "level" TEXT NOT NULL,
    "work_kinds" JSONB NOT NULL,
    "saw_kind" TEXT NOT NULL,
    "first_day" DATE NOT NULL,
    "last_day" DATE,
    "by" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "designation_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "assignment_fact" (
    "id" UUID NOT NULL,
    "assignment_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "items" JSONB NOT NULL,
    "first_day" DATE NOT NULL,
    "last_day" DATE NOT NULL,
    "trainers" JSONB NOT NULL,
    "purpose" TEXT,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "assignment_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "place_fact" (
    "id" UUID NOT NULL,
    "place_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "parent_id" UUID,
    "books" JSONB,
    "box" JSONB,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "place_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "item_fact" (
    "id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "work_kind" TEXT NOT NULL,
    "diameter_sixteenths" INTEGER NOT NULL,
    "place_id" UUID,
    "first_day" DATE,
    "last_day" DATE,
    "hands" TEXT,
    "species" TEXT,
    "trail_open" BOOLEAN,
    "may_roll" BOOLEAN,
    "list" TEXT,
    "height_feet" DOUBLE PRECISION,
    "approval" JSONB,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "item_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "expected_work_fact" (
    "id" UUID NOT NULL,
    "expected_work_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "work_kind" TEXT NOT NULL,
    "diameter_sixteenths" INTEGER NOT NULL,
    "place_id" UUID,
    "first_day" DATE,
    "last_day" DATE,
    "hands" TEXT,
    "species" TEXT,
    "trail_open" BOOLEAN,
    "may_roll" BOOLEAN,
    "list" TEXT,
    "least" INTEGER NOT NULL,
    "most" INTEGER NOT NULL,
    "complexity" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "expected_work_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rating_fact" (
    "id" UUID NOT NULL,
    "rating_id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "complexity" TEXT NOT NULL,
    "observations" JSONB,
    "rater_id" UUID NOT NULL,
    "day" DATE NOT NULL,
    "how" TEXT NOT NULL,
    "reason" TEXT,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "rating_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "raise_fact" (
    "id" UUID NOT NULL,
    "raise_id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "complexity" TEXT NOT NULL,
    "by_id" UUID NOT NULL,
    "day" DATE NOT NULL,
    "first_day" DATE,
    "reason" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "raise_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "card_fact" (
    "id" UUID NOT NULL,
    "card_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "line" INTEGER NOT NULL,
    "person_id" UUID NOT NULL,
    "book_id" UUID NOT NULL,
    "work_kinds" JSONB NOT NULL,
    "saw_kinds" JSONB NOT NULL,
    "level" TEXT NOT NULL,
    "evaluation_day" DATE,
    "issued_day" DATE,
    "effective_day" DATE NOT NULL,
    "last_day" DATE,
    "restrictions" JSONB NOT NULL,
    "decision" TEXT,
    "carried_in" JSONB,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "card_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ending_fact" (
    "id" UUID NOT NULL,
    "ending_id" UUID NOT NULL,
    "card_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "first_day" DATE NOT NULL,
    "decision" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "ending_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "resolution_fact" (
    "id" UUID NOT NULL,
    "resolution_id" UUID NOT NULL,
    "card_id" UUID NOT NULL,
    "restriction" TEXT NOT NULL,
    "into" JSONB NOT NULL,
    "by" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "resolution_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "extension_fact" (
    "id" UUID NOT NULL,
    "extension_id" UUID NOT NULL,
    "book_id" UUID NOT NULL,
    "runs_to" DATE NOT NULL,
    "effective_day" DATE NOT NULL,
    "order" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "of" JSONB NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "extension_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "suspension_fact" (
    "id" UUID NOT NULL,
    "suspension_id" UUID NOT NULL,
    "form" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "subject" JSONB NOT NULL,
    "work_kinds" JSONB,
    "saw_kinds" JSONB,
    "first_day" DATE NOT NULL,
    "last_day" DATE,
    "notices" JSONB,
    "by" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "suspension_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lift_fact" (
    "id" UUID NOT NULL,
    "lift_id" UUID NOT NULL,
    "suspension_id" UUID NOT NULL,
    "day" DATE NOT NULL,
    "decision" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "lift_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account_fact" (
    "id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "sign_in_name" TEXT NOT NULL,
    "person_id" UUID,
    "founding" BOOLEAN NOT NULL,
    "closed" BOOLEAN NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "account_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account_role_fact" (
    "id" UUID NOT NULL,
    "account_role_id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "unit_id" UUID,
    "organisation_id" UUID,
    "first_day" DATE NOT NULL,
    "last_day" DATE,
    "by" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "account_role_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "access_log" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "account_id" UUID,
    "use_case" TEXT NOT NULL,
    "question" JSONB,
    "subject" UUID,
    "n" BIGINT NOT NULL,
    "count" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "reason" TEXT,

    CONSTRAINT "access_log_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "answer" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "account_id" UUID,
    "question" JSONB NOT NULL,
    "n" BIGINT NOT NULL,
    "today" DATE NOT NULL,
    "editions" JSONB NOT NULL,
    "engine" TEXT NOT NULL,
    "digest" BYTEA NOT NULL,
    "body" TEXT NOT NULL,

    CONSTRAINT "answer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "desk"."password" (
    "account_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "changed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "password_pkey" PRIMARY KEY ("account_id")
);

-- CreateTable
CREATE TABLE "desk"."session" (
    "digest" TEXT NOT NULL,
    "account_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,
    "stepped_up_at" TIMESTAMPTZ(3),
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "session_pkey" PRIMARY KEY ("digest")
);

-- CreateTable
CREATE TABLE "desk"."link" (
    "digest" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "account_id" UUID,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "link_pkey" PRIMARY KEY ("digest")
);

-- CreateTable
CREATE TABLE "desk"."setting" (
    "key" TEXT NOT NULL,
    "value" TEXT NOT NULL,

    CONSTRAINT "setting_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "desk"."tries" (
    "key" TEXT NOT NULL,
    "points" INTEGER NOT NULL,
    "expire" TIMESTAMPTZ(3),

    CONSTRAINT "tries_pkey" PRIMARY KEY ("key")
);

-- CreateIndex
CREATE UNIQUE INDEX "entry_command_key" ON "entry"("command");

-- CreateIndex
CREATE UNIQUE INDEX "entry_prev_key" ON "entry"("prev");

-- CreateIndex
CREATE UNIQUE INDEX "entry_hash_key" ON "entry"("hash");

-- CreateIndex
CREATE UNIQUE INDEX "program_code_key" ON "program"("code");

-- CreateIndex
CREATE UNIQUE INDEX "statement_code_key" ON "statement"("code");

-- CreateIndex
CREATE UNIQUE INDEX "book_code_key" ON "book"("code");

-- CreateIndex
CREATE UNIQUE INDEX "edition_code_key" ON "edition"("code");

-- CreateIndex
CREATE UNIQUE INDEX "confirmation_code_key" ON "confirmation"("code");

-- CreateIndex
CREATE UNIQUE INDEX "caution_code_key" ON "caution"("code");

-- CreateIndex
CREATE UNIQUE INDEX "organisation_code_key" ON "organisation"("code");

-- CreateIndex
CREATE UNIQUE INDEX "person_code_key" ON "person"("code");

-- CreateIndex
CREATE UNIQUE INDEX "membership_code_key" ON "membership"("code");

-- CreateIndex
CREATE UNIQUE INDEX "permission_code_key" ON "permission"("code");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_code_key" ON "certificate"("code");

-- CreateIndex
CREATE UNIQUE INDEX "designation_code_key" ON "designation"("code");

-- CreateIndex
CREATE UNIQUE INDEX "assignment_code_key" ON "assignment"("code");

-- CreateIndex
CREATE UNIQUE INDEX "place_code_key" ON "place"("code");

-- CreateIndex
CREATE UNIQUE INDEX "item_code_key" ON "item"("code");

-- CreateIndex
CREATE UNIQUE INDEX "expected_work_code_key" ON "expected_work"("code");

-- CreateIndex
CREATE UNIQUE INDEX "rating_code_key" ON "rating"("code");

-- CreateIndex
CREATE UNIQUE INDEX "raise_code_key" ON "raise"("code");

-- CreateIndex
CREATE UNIQUE INDEX "card_code_key" ON "card"("code");

-- CreateIndex
CREATE UNIQUE INDEX "card_number_line_key" ON "card"("number", "line");

-- CreateIndex
CREATE UNIQUE INDEX "card_id_number_line_key" ON "card"("id", "number", "line");

-- CreateIndex
CREATE UNIQUE INDEX "card_number_number_person_id_key" ON "card_number"("number", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "ending_code_key" ON "ending"("code");

-- CreateIndex
CREATE UNIQUE INDEX "resolution_code_key" ON "resolution"("code");

-- CreateIndex
CREATE UNIQUE INDEX "extension_code_key" ON "extension"("code");

-- CreateIndex
CREATE UNIQUE INDEX "suspension_code_key" ON "suspension"("code");

-- CreateIndex
CREATE UNIQUE INDEX "lift_code_key" ON "lift"("code");

-- CreateIndex
CREATE UNIQUE INDEX "account_code_key" ON "account"("code");

-- CreateIndex
CREATE UNIQUE INDEX "account_role_code_key" ON "account_role"("code");

-- CreateIndex
CREATE UNIQUE INDEX "program_fact_supersedes_key" ON "program_fact"("supersedes");

-- CreateIndex
CREATE INDEX "program_fact_recorded_in_idx" ON "program_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "program_fact_id_program_id_superseded_in_key" ON "program_fact"("id", "program_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "statement_fact_supersedes_key" ON "statement_fact"("supersedes");

-- CreateIndex
CREATE INDEX "statement_fact_recorded_in_idx" ON "statement_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "statement_fact_id_statement_id_superseded_in_key" ON "statement_fact"("id", "statement_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "book_fact_supersedes_key" ON "book_fact"("supersedes");

-- CreateIndex
CREATE INDEX "book_fact_recorded_in_idx" ON "book_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "book_fact_id_book_id_superseded_in_key" ON "book_fact"("id", "book_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "edition_fact_supersedes_key" ON "edition_fact"("supersedes");

-- CreateIndex
CREATE INDEX "edition_fact_recorded_in_idx" ON "edition_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "edition_fact_id_edition_id_superseded_in_key" ON "edition_fact"("id", "edition_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "confirmation_fact_supersedes_key" ON "confirmation_fact"("supersedes");

-- CreateIndex
CREATE INDEX "confirmation_fact_recorded_in_idx" ON "confirmation_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "confirmation_fact_id_confirmation_id_superseded_in_key" ON "confirmation_fact"("id", "confirmation_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "caution_fact_supersedes_key" ON "caution_fact"("supersedes");

-- CreateIndex
CREATE INDEX "caution_fact_recorded_in_idx" ON "caution_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "caution_fact_id_caution_id_superseded_in_key" ON "caution_fact"("id", "caution_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "organisation_fact_supersedes_key" ON "organisation_fact"("supersedes");

-- CreateIndex
CREATE INDEX "organisation_fact_recorded_in_idx" ON "organisation_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "organisation_fact_id_organisation_id_superseded_in_key" ON "organisation_fact"("id", "organisation_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "person_fact_supersedes_key" ON "person_fact"("supersedes");

-- CreateIndex
CREATE INDEX "person_fact_recorded_in_idx" ON "person_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "person_fact_id_person_id_superseded_in_key" ON "person_fact"("id", "person_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "membership_fact_supersedes_key" ON "membership_fact"("supersedes");

-- CreateIndex
CREATE INDEX "membership_fact_recorded_in_idx" ON "membership_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "membership_fact_id_membership_id_superseded_in_key" ON "membership_fact"("id", "membership_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "permission_fact_supersedes_key" ON "permission_fact"("supersedes");

-- CreateIndex
CREATE INDEX "permission_fact_recorded_in_idx" ON "permission_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "permission_fact_id_permission_id_superseded_in_key" ON "permission_fact"("id", "permission_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_fact_supersedes_key" ON "certificate_fact"("supersedes");

-- CreateIndex
CREATE INDEX "certificate_fact_recorded_in_idx" ON "certificate_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_fact_id_certificate_id_superseded_in_key" ON "certificate_fact"("id", "certificate_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "designation_fact_supersedes_key" ON "designation_fact"("supersedes");

-- CreateIndex
CREATE INDEX "designation_fact_recorded_in_idx" ON "designation_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "designation_fact_id_designation_id_superseded_in_key" ON "designation_fact"("id", "designation_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "assignment_fact_supersedes_key" ON "assignment_fact"("supersedes");

-- CreateIndex
CREATE INDEX "assignment_fact_recorded_in_idx" ON "assignment_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "assignment_fact_id_assignment_id_superseded_in_key" ON "assignment_fact"("id", "assignment_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "place_fact_supersedes_key" ON "place_fact"("supersedes");

-- CreateIndex
CREATE INDEX "place_fact_recorded_in_idx" ON "place_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "place_fact_id_place_id_superseded_in_key" ON "place_fact"("id", "place_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "item_fact_supersedes_key" ON "item_fact"("supersedes");

-- CreateIndex
CREATE INDEX "item_fact_recorded_in_idx" ON "item_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "item_fact_id_item_id_superseded_in_key" ON "item_fact"("id", "item_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "expected_work_fact_supersedes_key" ON "expected_work_fact"("supersedes");

-- CreateIndex
CREATE INDEX "expected_work_fact_recorded_in_idx" ON "expected_work_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "expected_work_fact_id_expected_work_id_superseded_in_key" ON "expected_work_fact"("id", "expected_work_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "rating_fact_supersedes_key" ON "rating_fact"("supersedes");

-- CreateIndex
CREATE INDEX "rating_fact_recorded_in_idx" ON "rating_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "rating_fact_id_rating_id_superseded_in_key" ON "rating_fact"("id", "rating_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "raise_fact_supersedes_key" ON "raise_fact"("supersedes");

-- CreateIndex
CREATE INDEX "raise_fact_recorded_in_idx" ON "raise_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "raise_fact_id_raise_id_superseded_in_key" ON "raise_fact"("id", "raise_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "card_fact_supersedes_key" ON "card_fact"("supersedes");

-- CreateIndex
CREATE INDEX "card_fact_recorded_in_idx" ON "card_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "card_fact_id_card_id_superseded_in_key" ON "card_fact"("id", "card_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "ending_fact_supersedes_key" ON "ending_fact"("supersedes");

-- CreateIndex
CREATE INDEX "ending_fact_recorded_in_idx" ON "ending_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "ending_fact_id_ending_id_superseded_in_key" ON "ending_fact"("id", "ending_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "resolution_fact_supersedes_key" ON "resolution_fact"("supersedes");

-- CreateIndex
CREATE INDEX "resolution_fact_recorded_in_idx" ON "resolution_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "resolution_fact_id_resolution_id_superseded_in_key" ON "resolution_fact"("id", "resolution_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "extension_fact_supersedes_key" ON "extension_fact"("supersedes");

-- CreateIndex
CREATE INDEX "extension_fact_recorded_in_idx" ON "extension_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "extension_fact_id_extension_id_superseded_in_key" ON "extension_fact"("id", "extension_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "suspension_fact_supersedes_key" ON "suspension_fact"("supersedes");

-- CreateIndex
CREATE INDEX "suspension_fact_recorded_in_idx" ON "suspension_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "suspension_fact_id_suspension_id_superseded_in_key" ON "suspension_fact"("id", "suspension_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "lift_fact_supersedes_key" ON "lift_fact"("supersedes");

-- CreateIndex
CREATE INDEX "lift_fact_recorded_in_idx" ON "lift_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "lift_fact_id_lift_id_superseded_in_key" ON "lift_fact"("id", "lift_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "account_fact_supersedes_key" ON "account_fact"("supersedes");

-- CreateIndex
CREATE INDEX "account_fact_recorded_in_idx" ON "account_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "account_fact_id_account_id_superseded_in_key" ON "account_fact"("id", "account_id", "superseded_in");

-- CreateIndex
CREATE UNIQUE INDEX "account_role_fact_supersedes_key" ON "account_role_fact"("supersedes");

-- CreateIndex
CREATE INDEX "account_role_fact_recorded_in_idx" ON "account_role_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "account_role_fact_id_account_role_id_superseded_in_key" ON "account_role_fact"("id", "account_role_id", "superseded_in");

-- CreateIndex
CREATE INDEX "access_log_subject_at_idx" ON "access_log"("subject", "at");

-- CreateIndex
CREATE INDEX "access_log_account_id_at_idx" ON "access_log"("account_id", "at");

-- CreateIndex
CREATE INDEX "session_account_id_idx" ON "desk"."session"("account_id");

-- AddForeignKey
ALTER TABLE "entry" ADD CONSTRAINT "entry_prev_n_fkey" FOREIGN KEY ("prev_n") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "entry" ADD CONSTRAINT "entry_prev_fkey" FOREIGN KEY ("prev") REFERENCES "entry"("hash") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "entry" ADD CONSTRAINT "entry_actor_fkey" FOREIGN KEY ("actor") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "expected_work" ADD CONSTRAINT "expected_work_id_fkey" FOREIGN KEY ("id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card" ADD CONSTRAINT "card_number_fkey" FOREIGN KEY ("number") REFERENCES "card_number"("number") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card_number" ADD CONSTRAINT "card_number_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "program_fact" ADD CONSTRAINT "program_fact_program_id_fkey" FOREIGN KEY ("program_id") REFERENCES "program"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "program_fact" ADD CONSTRAINT "program_fact_book_id_fkey" FOREIGN KEY ("book_id") REFERENCES "book"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "program_fact" ADD CONSTRAINT "program_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "program_fact" ADD CONSTRAINT "program_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "program_fact" ADD CONSTRAINT "program_fact_supersedes_program_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "program_id", "recorded_in") REFERENCES "program_fact"("id", "program_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "statement_fact" ADD CONSTRAINT "statement_fact_statement_id_fkey" FOREIGN KEY ("statement_id") REFERENCES "statement"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "statement_fact" ADD CONSTRAINT "statement_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "statement_fact" ADD CONSTRAINT "statement_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "statement_fact" ADD CONSTRAINT "statement_fact_supersedes_statement_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "statement_id", "recorded_in") REFERENCES "statement_fact"("id", "statement_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "book_fact" ADD CONSTRAINT "book_fact_book_id_fkey" FOREIGN KEY ("book_id") REFERENCES "book"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "book_fact" ADD CONSTRAINT "book_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "book_fact" ADD CONSTRAINT "book_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "book_fact" ADD CONSTRAINT "book_fact_supersedes_book_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "book_id", "recorded_in") REFERENCES "book_fact"("id", "book_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "edition_fact" ADD CONSTRAINT "edition_fact_edition_id_fkey" FOREIGN KEY ("edition_id") REFERENCES "edition"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "edition_fact" ADD CONSTRAINT "edition_fact_book_id_fkey" FOREIGN KEY ("book_id") REFERENCES "book"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "edition_fact" ADD CONSTRAINT "edition_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "edition_fact" ADD CONSTRAINT "edition_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "edition_fact" ADD CONSTRAINT "edition_fact_supersedes_edition_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "edition_id", "recorded_in") REFERENCES "edition_fact"("id", "edition_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "confirmation_fact" ADD CONSTRAINT "confirmation_fact_confirmation_id_fkey" FOREIGN KEY ("confirmation_id") REFERENCES "confirmation"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "confirmation_fact" ADD CONSTRAINT "confirmation_fact_edition_id_fkey" FOREIGN KEY ("edition_id") REFERENCES "edition"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "confirmation_fact" ADD CONSTRAINT "confirmation_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "confirmation_fact" ADD CONSTRAINT "confirmation_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "confirmation_fact" ADD CONSTRAINT "confirmation_fact_supersedes_confirmation_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "confirmation_id", "recorded_in") REFERENCES "confirmation_fact"("id", "confirmation_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "caution_fact" ADD CONSTRAINT "caution_fact_caution_id_fkey" FOREIGN KEY ("caution_id") REFERENCES "caution"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "caution_fact" ADD CONSTRAINT "caution_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "caution_fact" ADD CONSTRAINT "caution_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "caution_fact" ADD CONSTRAINT "caution_fact_supersedes_caution_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "caution_id", "recorded_in") REFERENCES "caution_fact"("id", "caution_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "organisation_fact" ADD CONSTRAINT "organisation_fact_organisation_id_fkey" FOREIGN KEY ("organisation_id") REFERENCES "organisation"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "organisation_fact" ADD CONSTRAINT "organisation_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "organisation_fact" ADD CONSTRAINT "organisation_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "organisation_fact" ADD CONSTRAINT "organisation_fact_supersedes_organisation_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "organisation_id", "recorded_in") REFERENCES "organisation_fact"("id", "organisation_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "person_fact" ADD CONSTRAINT "person_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "person_fact" ADD CONSTRAINT "person_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "person_fact" ADD CONSTRAINT "person_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "person_fact" ADD CONSTRAINT "person_fact_supersedes_person_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "person_id", "recorded_in") REFERENCES "person_fact"("id", "person_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_membership_id_fkey" FOREIGN KEY ("membership_id") REFERENCES "membership"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_organisation_id_fkey" FOREIGN KEY ("organisation_id") REFERENCES "organisation"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "membership_fact" ADD CONSTRAINT "membership_fact_supersedes_membership_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "membership_id", "recorded_in") REFERENCES "membership_fact"("id", "membership_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "permission_fact" ADD CONSTRAINT "permission_fact_permission_id_fkey" FOREIGN KEY ("permission_id") REFERENCES "permission"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "permission_fact" ADD CONSTRAINT "permission_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "permission_fact" ADD CONSTRAINT "permission_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "permission_fact" ADD CONSTRAINT "permission_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "permission_fact" ADD CONSTRAINT "permission_fact_supersedes_permission_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "permission_id", "recorded_in") REFERENCES "permission_fact"("id", "permission_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "certificate_fact" ADD CONSTRAINT "certificate_fact_certificate_id_fkey" FOREIGN KEY ("certificate_id") REFERENCES "certificate"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "certificate_fact" ADD CONSTRAINT "certificate_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "certificate_fact" ADD CONSTRAINT "certificate_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "certificate_fact" ADD CONSTRAINT "certificate_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "certificate_fact" ADD CONSTRAINT "certificate_fact_supersedes_certificate_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "certificate_id", "recorded_in") REFERENCES "certificate_fact"("id", "certificate_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "designation_fact" ADD CONSTRAINT "designation_fact_designation_id_fkey" FOREIGN KEY ("designation_id") REFERENCES "designation"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "designation_fact" ADD CONSTRAINT "designation_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "designation_fact" ADD CONSTRAINT "designation_fact_book_id_fkey" FOREIGN KEY ("book_id") REFERENCES "book"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "designation_fact" ADD CONSTRAINT "designation_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "designation_fact" ADD CONSTRAINT "designation_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "designation_fact" ADD CONSTRAINT "designation_fact_supersedes_designation_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "designation_id", "recorded_in") REFERENCES "designation_fact"("id", "designation_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "assignment_fact" ADD CONSTRAINT "assignment_fact_assignment_id_fkey" FOREIGN KEY ("assignment_id") REFERENCES "assignment"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "assignment_fact" ADD CONSTRAINT "assignment_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "assignment_fact" ADD CONSTRAINT "assignment_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "assignment_fact" ADD CONSTRAINT "assignment_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "assignment_fact" ADD CONSTRAINT "assignment_fact_supersedes_assignment_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "assignment_id", "recorded_in") REFERENCES "assignment_fact"("id", "assignment_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "place_fact" ADD CONSTRAINT "place_fact_place_id_fkey" FOREIGN KEY ("place_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "place_fact" ADD CONSTRAINT "place_fact_parent_id_fkey" FOREIGN KEY ("parent_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "place_fact" ADD CONSTRAINT "place_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "place_fact" ADD CONSTRAINT "place_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "place_fact" ADD CONSTRAINT "place_fact_supersedes_place_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "place_id", "recorded_in") REFERENCES "place_fact"("id", "place_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "item_fact" ADD CONSTRAINT "item_fact_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "item_fact" ADD CONSTRAINT "item_fact_place_id_fkey" FOREIGN KEY ("place_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "item_fact" ADD CONSTRAINT "item_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "item_fact" ADD CONSTRAINT "item_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "item_fact" ADD CONSTRAINT "item_fact_supersedes_item_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "item_id", "recorded_in") REFERENCES "item_fact"("id", "item_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "expected_work_fact" ADD CONSTRAINT "expected_work_fact_expected_work_id_fkey" FOREIGN KEY ("expected_work_id") REFERENCES "expected_work"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "expected_work_fact" ADD CONSTRAINT "expected_work_fact_place_id_fkey" FOREIGN KEY ("place_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "expected_work_fact" ADD CONSTRAINT "expected_work_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "expected_work_fact" ADD CONSTRAINT "expected_work_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "expected_work_fact" ADD CONSTRAINT "expected_work_fact_supersedes_expected_work_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "expected_work_id", "recorded_in") REFERENCES "expected_work_fact"("id", "expected_work_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "rating_fact" ADD CONSTRAINT "rating_fact_rating_id_fkey" FOREIGN KEY ("rating_id") REFERENCES "rating"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "rating_fact" ADD CONSTRAINT "rating_fact_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "rating_fact" ADD CONSTRAINT "rating_fact_rater_id_fkey" FOREIGN KEY ("rater_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "rating_fact" ADD CONSTRAINT "rating_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "rating_fact" ADD CONSTRAINT "rating_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "rating_fact" ADD CONSTRAINT "rating_fact_supersedes_rating_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "rating_id", "recorded_in") REFERENCES "rating_fact"("id", "rating_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "raise_fact" ADD CONSTRAINT "raise_fact_raise_id_fkey" FOREIGN KEY ("raise_id") REFERENCES "raise"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "raise_fact" ADD CONSTRAINT "raise_fact_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "raise_fact" ADD CONSTRAINT "raise_fact_by_id_fkey" FOREIGN KEY ("by_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "raise_fact" ADD CONSTRAINT "raise_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "raise_fact" ADD CONSTRAINT "raise_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "raise_fact" ADD CONSTRAINT "raise_fact_supersedes_raise_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "raise_id", "recorded_in") REFERENCES "raise_fact"("id", "raise_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_card_id_fkey" FOREIGN KEY ("card_id") REFERENCES "card"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_book_id_fkey" FOREIGN KEY ("book_id") REFERENCES "book"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_card_id_number_line_fkey" FOREIGN KEY ("card_id", "number", "line") REFERENCES "card"("id", "number", "line") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_number_person_id_fkey" FOREIGN KEY ("number", "person_id") REFERENCES "card_number"("number", "person_id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "card_fact" ADD CONSTRAINT "card_fact_supersedes_card_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "card_id", "recorded_in") REFERENCES "card_fact"("id", "card_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "ending_fact" ADD CONSTRAINT "ending_fact_ending_id_fkey" FOREIGN KEY ("ending_id") REFERENCES "ending"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "ending_fact" ADD CONSTRAINT "ending_fact_card_id_fkey" FOREIGN KEY ("card_id") REFERENCES "card"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "ending_fact" ADD CONSTRAINT "ending_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "ending_fact" ADD CONSTRAINT "ending_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "ending_fact" ADD CONSTRAINT "ending_fact_supersedes_ending_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "ending_id", "recorded_in") REFERENCES "ending_fact"("id", "ending_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "resolution_fact" ADD CONSTRAINT "resolution_fact_resolution_id_fkey" FOREIGN KEY ("resolution_id") REFERENCES "resolution"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "resolution_fact" ADD CONSTRAINT "resolution_fact_card_id_fkey" FOREIGN KEY ("card_id") REFERENCES "card"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "resolution_fact" ADD CONSTRAINT "resolution_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "resolution_fact" ADD CONSTRAINT "resolution_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "resolution_fact" ADD CONSTRAINT "resolution_fact_supersedes_resolution_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "resolution_id", "recorded_in") REFERENCES "resolution_fact"("id", "resolution_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "extension_fact" ADD CONSTRAINT "extension_fact_extension_id_fkey" FOREIGN KEY ("extension_id") REFERENCES "extension"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "extension_fact" ADD CONSTRAINT "extension_fact_book_id_fkey" FOREIGN KEY ("book_id") REFERENCES "book"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "extension_fact" ADD CONSTRAINT "extension_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "extension_fact" ADD CONSTRAINT "extension_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "extension_fact" ADD CONSTRAINT "extension_fact_supersedes_extension_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "extension_id", "recorded_in") REFERENCES "extension_fact"("id", "extension_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "suspension_fact" ADD CONSTRAINT "suspension_fact_suspension_id_fkey" FOREIGN KEY ("suspension_id") REFERENCES "suspension"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "suspension_fact" ADD CONSTRAINT "suspension_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "suspension_fact" ADD CONSTRAINT "suspension_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "suspension_fact" ADD CONSTRAINT "suspension_fact_supersedes_suspension_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "suspension_id", "recorded_in") REFERENCES "suspension_fact"("id", "suspension_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "lift_fact" ADD CONSTRAINT "lift_fact_lift_id_fkey" FOREIGN KEY ("lift_id") REFERENCES "lift"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lift_fact" ADD CONSTRAINT "lift_fact_suspension_id_fkey" FOREIGN KEY ("suspension_id") REFERENCES "suspension"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lift_fact" ADD CONSTRAINT "lift_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "lift_fact" ADD CONSTRAINT "lift_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "lift_fact" ADD CONSTRAINT "lift_fact_supersedes_lift_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "lift_id", "recorded_in") REFERENCES "lift_fact"("id", "lift_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "account_fact" ADD CONSTRAINT "account_fact_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "account_fact" ADD CONSTRAINT "account_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "account_fact" ADD CONSTRAINT "account_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "account_fact" ADD CONSTRAINT "account_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "account_fact" ADD CONSTRAINT "account_fact_supersedes_account_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "account_id", "recorded_in") REFERENCES "account_fact"("id", "account_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_account_role_id_fkey" FOREIGN KEY ("account_role_id") REFERENCES "account_role"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_organisation_id_fkey" FOREIGN KEY ("organisation_id") REFERENCES "organisation"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "account_role_fact" ADD CONSTRAINT "account_role_fact_supersedes_account_role_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "account_role_id", "recorded_in") REFERENCES "account_role_fact"("id", "account_role_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "access_log" ADD CONSTRAINT "access_log_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_n_fkey" FOREIGN KEY ("n") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "desk"."password" ADD CONSTRAINT "password_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "desk"."session" ADD CONSTRAINT "session_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "desk"."link" ADD CONSTRAINT "link_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- From here on by hand.

CREATE EXTENSION IF NOT EXISTS btree_gist;

-- The journal: the first entry has none before it, and only the first. Moments are whole milliseconds in UTC.
ALTER TABLE entry
  ADD CONSTRAINT entry_first_has_no_previous CHECK ((n = 1) = (prev IS NULL)),
  ADD CONSTRAINT entry_number_from_one CHECK (n >= 1),
  ADD CONSTRAINT entry_hash_is_sha256 CHECK (octet_length(hash) = 32),
  ADD CONSTRAINT entry_command_has_digest CHECK ((command IS NULL) = (command_digest IS NULL));

-- A database holds one program.
CREATE UNIQUE INDEX program_only_one ON program ((true));

-- A fact is closed once, and nothing else of it ever changes. The names in quotes are read by lib/store/refusals.ts: the
-- driver hands on no constraint of a trigger. The path of names is set, so that no temporary table stands in for ours.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF OLD.superseded_in IS NOT NULL THEN
    RAISE EXCEPTION 'a fact of % is closed once, and this one is closed ("fact_closed_once")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_closed_once', TABLE = TG_TABLE_NAME;
  END IF;
  IF to_jsonb(NEW) - 'superseded_in' IS DISTINCT FROM to_jsonb(OLD) - 'superseded_in' THEN
    RAISE EXCEPTION 'nothing of a fact of % changes but the entry that closes it ("fact_unchanging")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_unchanging', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NEW;
END
$$;

-- What an entry recorded and closed is complete once it is written: nothing is slipped into the past. The entry comes
-- last in its transaction, so that its own facts find no such entry yet.
CREATE FUNCTION refuse_recording_in_past() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM entry JOIN written ON entry.n = written.recorded_in) THEN
    RAISE EXCEPTION 'a fact of % is recorded in an entry that is written already ("fact_recorded_before_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_recorded_before_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;

CREATE FUNCTION refuse_closing_in_past() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM entry JOIN written ON entry.n = written.superseded_in) THEN
    RAISE EXCEPTION 'a fact of % is closed in an entry that is written already ("fact_closed_before_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_closed_before_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;

-- What every table of facts has alike.
DO $$
DECLARE
  fact text;
  anchor text;
BEGIN
  FOR fact IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename LIKE '%\_fact' LOOP
    anchor := left(fact, -length('_fact'));
    EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK (superseded_in > recorded_in)', fact, fact || '_closed_later');
    EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK (octet_length(salt) >= 16)', fact, fact || '_salted');
    -- Of each record one version is current.
    EXECUTE format('CREATE UNIQUE INDEX %I ON %I (%I) WHERE superseded_in IS NULL', fact || '_current', fact, anchor || '_id');
    EXECUTE format('CREATE INDEX %I ON %I (superseded_in) WHERE superseded_in IS NOT NULL', fact || '_superseded_in_idx', fact);
    EXECUTE format('CREATE TRIGGER %I BEFORE UPDATE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', fact || '_unchanging', fact);
    EXECUTE format('CREATE TRIGGER %I AFTER INSERT ON %I REFERENCING NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION refuse_recording_in_past()', fact || '_recorded_now', fact);
    EXECUTE format('CREATE TRIGGER %I AFTER UPDATE ON %I REFERENCING NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_in_past()', fact || '_closed_now', fact);
  END LOOP;
END
$$;

-- Days: no span is backwards.
ALTER TABLE edition_fact ADD CONSTRAINT edition_fact_days CHECK (first_day <= last_day);
ALTER TABLE membership_fact ADD CONSTRAINT membership_fact_days CHECK (first_day <= last_day);
ALTER TABLE permission_fact ADD CONSTRAINT permission_fact_days CHECK (first_day <= last_day);
ALTER TABLE certificate_fact ADD CONSTRAINT certificate_fact_days CHECK (first_day <= last_day);
ALTER TABLE designation_fact ADD CONSTRAINT designation_fact_days CHECK (first_day <= last_day);
ALTER TABLE assignment_fact ADD CONSTRAINT assignment_fact_days CHECK (first_day <= last_day);
ALTER TABLE card_fact ADD CONSTRAINT card_fact_days CHECK (effective_day <= last_day);
ALTER TABLE suspension_fact ADD CONSTRAINT suspension_fact_days CHECK (first_day <= last_day);
ALTER TABLE item_fact ADD CONSTRAINT item_fact_days CHECK (first_day <= last_day);
ALTER TABLE expected_work_fact ADD CONSTRAINT expected_work_fact_days CHECK (first_day <= last_day);
ALTER TABLE account_role_fact ADD CONSTRAINT account_role_fact_days CHECK (first_day <= last_day);

-- Editions of one book never claim a day twice.
ALTER TABLE edition_fact ADD CONSTRAINT edition_fact_apart
  EXCLUDE USING gist (book_id WITH =, daterange(first_day, last_day, '[]') WITH &&) WHERE (superseded_in IS NULL);

-- From the program's first day of deciding on, a card comes from a decision, or says from where it was carried in. The
-- day stands in another table, so this is no CHECK.
CREATE FUNCTION refuse_undecided_card() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF EXISTS (
    SELECT FROM written JOIN program_fact ON program_fact.superseded_in IS NULL
    WHERE written.effective_day >= program_fact.first_day_of_deciding
      AND written.decision IS NULL AND written.carried_in IS NULL
  ) THEN
    RAISE EXCEPTION 'a card of this program has a decision or says where it comes from ("card_fact_decided")'
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'card_fact_decided', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;
CREATE TRIGGER card_fact_decided AFTER INSERT ON card_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_undecided_card();

-- Words that are one of a few, and what hangs on them.
ALTER TABLE permission_fact
  ADD CONSTRAINT permission_fact_says CHECK (says IN ('given', 'refused', 'withdrawn')),
  ADD CONSTRAINT permission_fact_refusal_stays CHECK (says = 'given' OR last_day IS NULL);
ALTER TABLE designation_fact ADD CONSTRAINT designation_fact_role CHECK (role IN ('instructor', 'evaluator'));
ALTER TABLE card_fact ADD CONSTRAINT card_fact_line CHECK (line BETWEEN 1 AND 99);
ALTER TABLE ending_fact
  ADD CONSTRAINT ending_fact_kind CHECK (kind IN ('withdrawn', 'reduced', 'replaced', 'surrendered'));
ALTER TABLE suspension_fact
  ADD CONSTRAINT suspension_fact_form CHECK (form IN ('suspension', 'stand-down')),
  ADD CONSTRAINT suspension_fact_kind CHECK (kind IN ('unsafe-act', 'incident', 'competence', 'administrative')),
  ADD CONSTRAINT suspension_fact_lifted_only CHECK (kind = 'administrative' OR last_day IS NULL);
ALTER TABLE place_fact
  ADD CONSTRAINT place_fact_kind CHECK (kind IN ('program', 'unit', 'place')),
  ADD CONSTRAINT place_fact_not_in_itself CHECK (parent_id <> place_id);
ALTER TABLE item_fact ADD CONSTRAINT item_fact_measures CHECK (diameter_sixteenths > 0 AND height_feet > 0);
ALTER TABLE expected_work_fact
  ADD CONSTRAINT expected_work_fact_measures CHECK (diameter_sixteenths > 0),
  ADD CONSTRAINT expected_work_fact_count CHECK (least >= 0 AND least <= most);
ALTER TABLE rating_fact ADD CONSTRAINT rating_fact_how CHECK (how IN ('on-site', 'photo', 'told'));

-- A name signs in one account.
CREATE UNIQUE INDEX account_fact_sign_in_name ON account_fact (sign_in_name) WHERE superseded_in IS NULL;

-- Rights. The owner migrates; the app reads and adds, closes facts by one column, and has the desk to itself.
REVOKE ALL ON SCHEMA public, desk FROM PUBLIC;
REVOKE ALL ON ALL TABLES IN SCHEMA public, desk FROM PUBLIC;
REVOKE ALL ON FUNCTION refuse_change(), refuse_recording_in_past(), refuse_closing_in_past(),
  refuse_undecided_card() FROM PUBLIC;
GRANT USAGE ON SCHEMA public, desk TO kerfbook_app;
GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA desk TO kerfbook_app;

DO $$
DECLARE
  name text;
BEGIN
  FOR name IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' LOOP
    EXECUTE format('GRANT SELECT, INSERT ON %I TO kerfbook_app', name);
    IF name LIKE '%\_fact' THEN
      EXECUTE format('GRANT UPDATE (superseded_in) ON %I TO kerfbook_app', name);
    END IF;
  END LOOP;
END
$$;
