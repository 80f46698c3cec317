-- Two records of one person, joined until the joining is withdrawn. Tables, keys and references as prisma/schema.prisma says them;
-- then what every table of facts has, as 0004_remarks gives it to its own.

-- CreateTable
CREATE TABLE "person_join" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "person_join_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person_join_fact" (
    "id" UUID NOT NULL,
    "person_join_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "stays_id" UUID NOT NULL,
    "because" TEXT NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "person_join_fact_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "person_join_code_key" ON "person_join"("code");

-- CreateIndex
CREATE UNIQUE INDEX "person_join_fact_supersedes_key" ON "person_join_fact"("supersedes");

-- CreateIndex
CREATE INDEX "person_join_fact_recorded_in_idx" ON "person_join_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "person_join_fact_id_person_join_id_superseded_in_key" ON "person_join_fact"("id", "person_join_id", "superseded_in");

-- AddForeignKey
ALTER TABLE "person_join_fact" ADD CONSTRAINT "person_join_fact_person_join_id_fkey" FOREIGN KEY ("person_join_id") REFERENCES "person_join"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "person_join_fact" ADD CONSTRAINT "person_join_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "person_join_fact" ADD CONSTRAINT "person_join_fact_stays_id_fkey" FOREIGN KEY ("stays_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "person_join_fact" ADD CONSTRAINT "person_join_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "person_join_fact" ADD CONSTRAINT "person_join_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "person_join_fact" ADD CONSTRAINT "person_join_fact_supersedes_person_join_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "person_join_id", "recorded_in") REFERENCES "person_join_fact"("id", "person_join_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- From here on by hand.

ALTER TABLE person_join_fact
  ADD CONSTRAINT person_join_fact_closed_later CHECK (superseded_in > recorded_in),
  ADD CONSTRAINT person_join_fact_salted CHECK (octet_length(salt) >= 16);
CREATE UNIQUE INDEX person_join_fact_current ON person_join_fact (person_join_id) WHERE superseded_in IS NULL;
CREATE INDEX person_join_fact_superseded_in_idx ON person_join_fact (superseded_in) WHERE superseded_in IS NOT NULL;
CREATE TRIGGER person_join_fact_unchanging BEFORE UPDATE ON person_join_fact
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER person_join_fact_recorded_now AFTER INSERT ON person_join_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_recording_in_past();
CREATE TRIGGER person_join_fact_closed_now AFTER UPDATE ON person_join_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_in_past();
CREATE CONSTRAINT TRIGGER person_join_fact_recorded_by_its_own AFTER INSERT ON person_join_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION refuse_recording_for_another();
CREATE CONSTRAINT TRIGGER person_join_fact_closed_by_its_own AFTER INSERT OR UPDATE ON person_join_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL)
  EXECUTE FUNCTION refuse_closing_for_another();

REVOKE ALL ON person_join, person_join_fact FROM PUBLIC;
GRANT SELECT, INSERT ON person_join, person_join_fact TO kerfbook_app;
GRANT UPDATE (superseded_in) ON person_join_fact TO kerfbook_app;

ALTER TABLE person_join_fact ADD CONSTRAINT person_join_fact_of_two CHECK (person_id <> stays_id);
CREATE UNIQUE INDEX person_join_fact_once ON person_join_fact (person_id) WHERE superseded_in IS NULL;
