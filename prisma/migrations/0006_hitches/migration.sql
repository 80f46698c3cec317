-- Hitches and who is in their crews. Tables, keys and references as prisma/schema.prisma says them; then what every table
-- of facts has, as 0004_remarks gives it to its own.

-- CreateTable
CREATE TABLE "hitch" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "hitch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "hitch_fact" (
    "id" UUID NOT NULL,
    "hitch_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "place_id" UUID NOT NULL,
    "first_day" DATE NOT NULL,
    "last_day" DATE NOT NULL,
    "lead_id" UUID,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "hitch_fact_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "hitch_code_key" ON "hitch"("code");

-- CreateIndex
CREATE UNIQUE INDEX "hitch_fact_supersedes_key" ON "hitch_fact"("supersedes");

-- CreateIndex
CREATE INDEX "hitch_fact_recorded_in_idx" ON "hitch_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "hitch_fact_id_hitch_id_superseded_in_key" ON "hitch_fact"("id", "hitch_id", "superseded_in");

-- AddForeignKey
ALTER TABLE "hitch_fact" ADD CONSTRAINT "hitch_fact_hitch_id_fkey" FOREIGN KEY ("hitch_id") REFERENCES "hitch"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "hitch_fact" ADD CONSTRAINT "hitch_fact_place_id_fkey" FOREIGN KEY ("place_id") REFERENCES "place"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "hitch_fact" ADD CONSTRAINT "hitch_fact_lead_id_fkey" FOREIGN KEY ("lead_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "hitch_fact" ADD CONSTRAINT "hitch_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "hitch_fact" ADD CONSTRAINT "hitch_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "hitch_fact" ADD CONSTRAINT "hitch_fact_supersedes_hitch_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "hitch_id", "recorded_in") REFERENCES "hitch_fact"("id", "hitch_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- CreateTable
CREATE TABLE "placement" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "placement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "placement_fact" (
    "id" UUID NOT NULL,
    "placement_id" UUID NOT NULL,
    "hitch_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "first_day" DATE NOT NULL,
    "last_day" DATE NOT NULL,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "placement_fact_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "placement_code_key" ON "placement"("code");

-- CreateIndex
CREATE UNIQUE INDEX "placement_fact_supersedes_key" ON "placement_fact"("supersedes");

-- CreateIndex
CREATE INDEX "placement_fact_recorded_in_idx" ON "placement_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "placement_fact_id_placement_id_superseded_in_key" ON "placement_fact"("id", "placement_id", "superseded_in");

-- AddForeignKey
ALTER TABLE "placement_fact" ADD CONSTRAINT "placement_fact_placement_id_fkey" FOREIGN KEY ("placement_id") REFERENCES "placement"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "placement_fact" ADD CONSTRAINT "placement_fact_hitch_id_fkey" FOREIGN KEY ("hitch_id") REFERENCES "hitch"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "placement_fact" ADD CONSTRAINT "placement_fact_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "placement_fact" ADD CONSTRAINT "placement_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "placement_fact" ADD CONSTRAINT "placement_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "placement_fact" ADD CONSTRAINT "placement_fact_supersedes_placement_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "placement_id", "recorded_in") REFERENCES "placement_fact"("id", "placement_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- From here on by hand.

ALTER TABLE hitch_fact
  ADD CONSTRAINT hitch_fact_closed_later CHECK (superseded_in > recorded_in),
  ADD CONSTRAINT hitch_fact_salted CHECK (octet_length(salt) >= 16);
CREATE UNIQUE INDEX hitch_fact_current ON hitch_fact (hitch_id) WHERE superseded_in IS NULL;
CREATE INDEX hitch_fact_superseded_in_idx ON hitch_fact (superseded_in) WHERE superseded_in IS NOT NULL;
CREATE TRIGGER hitch_fact_unchanging BEFORE UPDATE ON hitch_fact
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER hitch_fact_recorded_now AFTER INSERT ON hitch_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_recording_in_past();
CREATE TRIGGER hitch_fact_closed_now AFTER UPDATE ON hitch_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_in_past();
CREATE CONSTRAINT TRIGGER hitch_fact_recorded_by_its_own AFTER INSERT ON hitch_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION refuse_recording_for_another();
CREATE CONSTRAINT TRIGGER hitch_fact_closed_by_its_own AFTER INSERT OR UPDATE ON hitch_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL)
  EXECUTE FUNCTION refuse_closing_for_another();

REVOKE ALL ON hitch, hitch_fact FROM PUBLIC;
GRANT SELECT, INSERT ON hitch, hitch_fact TO kerfbook_app;
GRANT UPDATE (superseded_in) ON hitch_fact TO kerfbook_app;

ALTER TABLE placement_fact
  ADD CONSTRAINT placement_fact_closed_later CHECK (superseded_in > recorded_in),
  ADD CONSTRAINT placement_fact_salted CHECK (octet_length(salt) >= 16);
CREATE UNIQUE INDEX placement_fact_current ON placement_fact (placement_id) WHERE superseded_in IS NULL;
CREATE INDEX placement_fact_superseded_in_idx ON placement_fact (superseded_in) WHERE superseded_in IS NOT NULL;
CREATE TRIGGER placement_fact_unchanging BEFORE UPDATE ON placement_fact
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER placement_fact_recorded_now AFTER INSERT ON placement_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_recording_in_past();
CREATE TRIGGER placement_fact_closed_now AFTER UPDATE ON placement_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_in_past();
CREATE CONSTRAINT TRIGGER placement_fact_recorded_by_its_own AFTER INSERT ON placement_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION refuse_recording_for_another();
CREATE CONSTRAINT TRIGGER placement_fact_closed_by_its_own AFTER INSERT OR UPDATE ON placement_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL)
  EXECUTE FUNCTION refuse_closing_for_another();

REVOKE ALL ON placement, placement_fact FROM PUBLIC;
GRANT SELECT, INSERT ON placement, placement_fact TO kerfbook_app;
GRANT UPDATE (superseded_in) ON placement_fact TO kerfbook_app;

ALTER TABLE hitch_fact ADD CONSTRAINT hitch_fact_days CHECK (first_day <= last_day);
ALTER TABLE placement_fact ADD CONSTRAINT placement_fact_days CHECK (first_day <= last_day);

-- On one day nobody is in two crews.
ALTER TABLE placement_fact ADD CONSTRAINT placement_fact_one_crew
  EXCLUDE USING gist (person_id WITH =, daterange(first_day, last_day, '[]') WITH &&) WHERE (superseded_in IS NULL);
