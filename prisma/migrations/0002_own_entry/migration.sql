-- A fact is recorded and closed by the transaction that writes the entry it names, and by no other. What 0001_begin
-- refuses is an entry that is written already. A transaction that names the number of an entry to come, and commits
-- after somebody else has written it, is found out on commit: a row knows by its xmin which transaction wrote it.
-- The names in quotes are read by lib/store/refusals.ts.
CREATE FUNCTION refuse_recording_for_another() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM entry WHERE n = NEW.recorded_in AND xmin = pg_current_xact_id()::xid) THEN
    RAISE EXCEPTION 'a fact of % is recorded in an entry that another transaction wrote ("fact_recorded_with_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_recorded_with_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;

CREATE FUNCTION refuse_closing_for_another() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM entry WHERE n = NEW.superseded_in AND xmin = pg_current_xact_id()::xid) THEN
    RAISE EXCEPTION 'a fact of % is closed in an entry that another transaction wrote ("fact_closed_with_its_entry")', TG_TABLE_NAME
      USING ERRCODE = 'integrity_constraint_violation', CONSTRAINT = 'fact_closed_with_its_entry', TABLE = TG_TABLE_NAME;
  END IF;
  RETURN NULL;
END
$$;

DO $$
DECLARE
  fact text;
BEGIN
  FOR fact IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename LIKE '%\_fact' LOOP
    EXECUTE format('CREATE CONSTRAINT TRIGGER %I AFTER INSERT ON %I DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION refuse_recording_for_another()', fact || '_recorded_by_its_own', fact);
    -- Of an update and of a row that comes closed.
    EXECUTE format('CREATE CONSTRAINT TRIGGER %I AFTER INSERT OR UPDATE ON %I DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (NEW.superseded_in IS NOT NULL) EXECUTE FUNCTION refuse_closing_for_another()', fact || '_closed_by_its_own', fact);
  END LOOP;
END
$$;

REVOKE ALL ON FUNCTION refuse_recording_for_another(), refuse_closing_for_another() FROM PUBLIC;
