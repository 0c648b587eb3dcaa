-- Row-level security keeps the index by state from ever being used (a comparison of an enum is not leakproof), so it only
-- made every claim that came in, and every change of one, dearer.
DROP INDEX "Claim_programOrganizationId_state_idx";

-- A bulk load takes stock after its first rows: only then does the server know which index leads to one claim and which
-- to a whole program. Only the owner may, so the app asks for just that.
CREATE FUNCTION take_stock_of_claims() RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  ANALYZE "Claim", "ClaimMark";
END $$;
REVOKE ALL ON FUNCTION take_stock_of_claims() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION take_stock_of_claims() TO ductmend_app;
