-- The name and age of a person are blanked on the word of the program manager, in an entry that says so. Keys and
-- references as prisma/schema.prisma says them; then how a row of person_fact may change, and by what.

-- AlterTable
ALTER TABLE "person_fact" ADD COLUMN "erased_in" BIGINT;

-- CreateIndex
CREATE INDEX "person_fact_erased_in_idx" ON "person_fact"("erased_in");

-- AddForeignKey
ALTER TABLE "person_fact" ADD CONSTRAINT "person_fact_erased_in_fkey" FOREIGN KEY ("erased_in") REFERENCES "entry"("n") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- From here on by hand.

ALTER TABLE person_fact ADD CONSTRAINT person_fact_erased_later CHECK (erased_in > recorded_in);

-- Of a person nothing changes but the entry that closes a fact, and, once, what an erasure blanks. The salt goes with the
-- name: with it the name could be tried against the digest that the entry keeps.
CREATE FUNCTION refuse_change_of_person() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF OLD.erased_in IS NULL AND NEW.erased_in IS NOT NULL THEN
    IF NEW.name = 'Erased by entry ' || NEW.erased_in AND NEW.birth_date IS NULL AND NEW.of_age_from IS NULL
      AND NEW.attested_by IS NULL AND to_jsonb(NEW) - ARRAY['name', 'birth_date', 'of_age_from', 'attested_by', 'erased_in', 'salt']
        IS NOT DISTINCT FROM to_jsonb(OLD) - ARRAY['name', 'birth_date', 'of_age_from', 'attested_by', 'erased_in', 'salt'] THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'an erasure blanks the name and the age of a person and nothing else ("fact_unchanging")'
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_unchanging', TABLE = TG_TABLE_NAME;
  END IF;
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

-- As refuse_closing_in_past, for the facts that are closed now and not for those that an erasure touches long after.
CREATE FUNCTION refuse_closing_person_in_past() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM written JOIN before USING (id) JOIN entry ON entry.n = written.superseded_in
    WHERE before.superseded_in IS DISTINCT FROM written.superseded_in) THEN
    RAISE EXCEPTION 'a fact of % is closed in an entry that is written already ("fact_closed_before_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_closed_before_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;

-- As refuse_closing_for_another, and the same for erasures.
CREATE FUNCTION refuse_settling_person_for_another() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF NEW.superseded_in IS NOT NULL AND (TG_OP = 'INSERT' OR OLD.superseded_in IS DISTINCT FROM NEW.superseded_in)
    AND NOT EXISTS (SELECT FROM entry WHERE n = NEW.superseded_in AND xmin = pg_current_xact_id()::xid) THEN
    RAISE EXCEPTION 'a fact of % is closed in an entry that another transaction wrote ("fact_closed_with_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_closed_with_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  IF NEW.erased_in IS NOT NULL AND (TG_OP = 'INSERT' OR OLD.erased_in IS DISTINCT FROM NEW.erased_in)
    AND NOT EXISTS (SELECT FROM entry WHERE n = NEW.erased_in AND xmin = pg_current_xact_id()::xid) THEN
    RAISE EXCEPTION 'a fact of % is erased in an entry that another transaction wrote ("fact_erased_with_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_erased_with_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;

DROP TRIGGER person_fact_unchanging ON person_fact;
CREATE TRIGGER person_fact_unchanging BEFORE UPDATE ON person_fact
  FOR EACH ROW EXECUTE FUNCTION refuse_change_of_person();
DROP TRIGGER person_fact_closed_now ON person_fact;
CREATE TRIGGER person_fact_closed_now AFTER UPDATE ON person_fact REFERENCING OLD TABLE AS before NEW TABLE AS written
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_person_in_past();
DROP TRIGGER person_fact_closed_by_its_own ON person_fact;
CREATE CONSTRAINT TRIGGER person_fact_closed_by_its_own AFTER INSERT OR UPDATE ON person_fact
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL OR NEW.erased_in IS NOT NULL)
  EXECUTE FUNCTION refuse_settling_person_for_another();

-- The app may not change these columns; it may ask for this, which runs as the owner and does nothing else.
CREATE FUNCTION erase_person(erased uuid, entry_number bigint) RETURNS SETOF uuid
LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE person_fact SET name = 'Erased by entry ' || entry_number, birth_date = NULL, of_age_from = NULL,
    attested_by = NULL, erased_in = entry_number, salt = decode(replace(gen_random_uuid()::text, '-', ''), 'hex')
  WHERE person_id = erased AND erased_in IS NULL
  RETURNING id
$$;

REVOKE ALL ON FUNCTION refuse_change_of_person(), refuse_closing_person_in_past(), refuse_settling_person_for_another(),
  erase_person(uuid, bigint) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION erase_person(uuid, bigint) TO kerfbook_app;
