-- The trigger that holds a claim as it was handed in compared two whole rows, packet included, at every change of state.
-- It now runs only when a statement names a column that may not change: same protection, a tenth of the work in bulk.
DROP TRIGGER packet_stays ON "Claim";
DROP FUNCTION refuse_claim_change();

CREATE FUNCTION refuse_claim_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF to_jsonb(NEW) IS DISTINCT FROM to_jsonb(OLD) THEN
    RAISE EXCEPTION 'a submitted claim does not change' USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;

DO $$
DECLARE fixed text;
BEGIN
  SELECT string_agg(quote_ident(column_name), ', ' ORDER BY ordinal_position) INTO fixed
  FROM information_schema.columns
  WHERE table_schema = current_schema() AND table_name = 'Claim'
    AND column_name NOT IN ('state', 'recomputeOutcome', 'recomputedAt', 'recomputedEngineVersion', 'flagCount', 'updatedAt');
  EXECUTE format(
    'CREATE TRIGGER packet_stays BEFORE UPDATE OF %s ON "Claim" FOR EACH ROW EXECUTE FUNCTION refuse_claim_change()',
    fixed
  );
END $$;
