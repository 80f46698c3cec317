-- Why an entry was made, in the words of who made it, and the paper that it was typed from. Tables, keys and references as
-- prisma/schema.prisma says them; then what every table of facts has, as 0001_begin and 0002_own_entry give it to others.

-- CreateTable
CREATE TABLE "remark" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "remark_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "remark_fact" (
    "id" UUID NOT NULL,
    "remark_id" UUID NOT NULL,
    "why" TEXT,
    "paper" JSONB,
    "recorded_in" BIGINT NOT NULL,
    "superseded_in" BIGINT,
    "salt" BYTEA NOT NULL,
    "supersedes" UUID,

    CONSTRAINT "remark_fact_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "remark_code_key" ON "remark"("code");

-- CreateIndex
CREATE UNIQUE INDEX "remark_fact_supersedes_key" ON "remark_fact"("supersedes");

-- CreateIndex
CREATE INDEX "remark_fact_recorded_in_idx" ON "remark_fact"("recorded_in");

-- CreateIndex
CREATE UNIQUE INDEX "remark_fact_id_remark_id_superseded_in_key" ON "remark_fact"("id", "remark_id", "superseded_in");

-- AddForeignKey
ALTER TABLE "remark_fact" ADD CONSTRAINT "remark_fact_remark_id_fkey" FOREIGN KEY ("remark_id") REFERENCES "remark"("id") ON DELETE NO ACTION ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "remark_fact" ADD CONSTRAINT "remark_fact_recorded_in_fkey" FOREIGN KEY ("recorded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "remark_fact" ADD CONSTRAINT "remark_fact_superseded_in_fkey" FOREIGN KEY ("superseded_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "remark_fact" ADD CONSTRAINT "remark_fact_supersedes_remark_id_recorded_in_fkey" FOREIGN KEY ("supersedes", "remark_id", "recorded_in") REFERENCES "remark_fact"("id", "remark_id", "superseded_in") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- From here on by hand.

ALTER TABLE remark_fact
  ADD CONSTRAINT remark_fact_closed_later CHECK (superseded_in > recorded_in),
  ADD CONSTRAINT remark_fact_salted CHECK (octet_length(salt) >= 16);
CREATE UNIQUE INDEX remark_fact_current ON remark_fact (remark_id) WHERE superseded_in IS NULL;
CREATE INDEX remark_fact_superseded_in_idx ON remark_fact (superseded_in) WHERE superseded_in IS NOT NULL;
CREATE TRIGGER remark_fact_unchanging BEFORE UPDATE ON remark_fact
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER remark_fact_recorded_now AFTER INSERT ON remark_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_recording_in_past();
CREATE TRIGGER remark_fact_closed_now AFTER UPDATE ON remark_fact REFERENCING NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_in_past();
CREATE CONSTRAINT TRIGGER remark_fact_recorded_by_its_own AFTER INSERT ON remark_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION refuse_recording_for_another();
CREATE CONSTRAINT TRIGGER remark_fact_closed_by_its_own AFTER INSERT OR UPDATE ON remark_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL)
  EXECUTE FUNCTION refuse_closing_for_another();

REVOKE ALL ON remark, remark_fact FROM PUBLIC;
GRANT SELECT, INSERT ON remark, remark_fact TO kerfbook_app;
GRANT UPDATE (superseded_in) ON remark_fact TO kerfbook_app;
