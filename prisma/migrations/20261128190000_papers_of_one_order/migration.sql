-- Who holds the link of a paper also sees the paper that took its place or that changes it: otherwise a homeowner could
-- go on reading, and accept, a paper that the firm has replaced. Anything else of the organization stays out of sight.
DROP POLICY seen ON "Proposal";
CREATE POLICY seen ON "Proposal" FOR SELECT USING (
  "organizationId" = (SELECT ductmend_organization())
  AND (
    (SELECT ductmend_proposal()) IS NULL
    OR "id" = (SELECT ductmend_proposal())
    OR "supersedesId" = (SELECT ductmend_proposal())
  )
);
