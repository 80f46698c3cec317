-- What somebody says to be wrong about a record of theirs. Tables, keys and references as prisma/schema.prisma says them;
-- then what every table of facts has, as 0004_remarks gives it to its own.

-- CreateTable
CREATE TABLE "dispute" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "dispute_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "dispute_fact" (
    "id" UUID NOT NULL,
    "dispute_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "section" TEXT NOT NULL,
    "record" TEXT NOT NULL,
    "says" TEXT NOT NULL,
    "day" DATE NOT NULL,
    "answer_by" DATE NOT NULL,
    "answered" JSONB,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "dispute_fact_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "dispute_code_key" ON "dispute"("code");

-- CreateIndex
CREATE UNIQUE INDEX "dispute_fact_supersedes_key" ON "dispute_fact"("supersedes");

-- CreateIndex
CREATE INDEX "dispute_fact_recorded_in_idx" ON "dispute_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "dispute_fact_id_dispute_id_superseded_in_key" ON "dispute_fact"("id", "dispute_id", "superseded_in");

-- AddForeignKey
ALTER TABLE "dispute_fact" ADD CONSTRAINT "dispute_fact_dispute_id_fkey" FOREIGN KEY ("dispute_id") REFERENCES "dispute"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "dispute_fact" ADD CONSTRAINT "dispute_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "dispute_fact" ADD CONSTRAINT "dispute_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "dispute_fact" ADD CONSTRAINT "dispute_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "dispute_fact" ADD CONSTRAINT "dispute_fact_supersedes_dispute_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "dispute_id", "recorded_in") REFERENCES "dispute_fact"("id", "dispute_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- From here on by hand.

ALTER TABLE dispute_fact
  ADD CONSTRAINT dispute_fact_closed_later CHECK (superseded_in > recorded_in),
  ADD CONSTRAINT dispute_fact_salted CHECK (octet_length(salt) >= 16);
CREATE UNIQUE INDEX dispute_fact_current ON dispute_fact (dispute_id) WHERE superseded_in IS NULL;
CREATE INDEX dispute_fact_superseded_in_idx ON dispute_fact (superseded_in) WHERE superseded_in IS NOT NULL;
CREATE TRIGGER dispute_fact_unchanging BEFORE UPDATE ON dispute_fact
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER dispute_fact_recorded_now AFTER INSERT ON dispute_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_recording_in_past();
CREATE TRIGGER dispute_fact_closed_now AFTER UPDATE ON dispute_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_in_past();
CREATE CONSTRAINT TRIGGER dispute_fact_recorded_by_its_own AFTER INSERT ON dispute_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION refuse_recording_for_another();
CREATE CONSTRAINT TRIGGER dispute_fact_closed_by_its_own AFTER INSERT OR UPDATE ON dispute_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL)
  EXECUTE FUNCTION refuse_closing_for_another();

REVOKE ALL ON dispute, dispute_fact FROM PUBLIC;
GRANT SELECT, INSERT ON dispute, dispute_fact TO kerfbook_app;
GRANT UPDATE (superseded_in) ON dispute_fact TO kerfbook_app;

ALTER TABLE dispute_fact ADD CONSTRAINT dispute_fact_days CHECK (day <= answer_by);
