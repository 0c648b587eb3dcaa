-- An organization's own figures for the repairs, version by version; history stays as it was.
CREATE TABLE "RepairCatalogueVersion" (
    "organizationId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "usesRetests" BOOLEAN NOT NULL DEFAULT false,
    "contentHash" TEXT NOT NULL,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "RepairCatalogueVersion_pkey" PRIMARY KEY ("organizationId","version")
);
ALTER TABLE "RepairCatalogueVersion" ADD CONSTRAINT "RepairCatalogueVersion_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A retest speaks of a whole job and not of one leak, so experience is kept by job. Nothing was ever written by leak.
DROP TABLE "RepairExperience";
CREATE TABLE "RepairExperience" (
    "organizationId" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "jobRevision" INTEGER NOT NULL,
    "treated" JSONB NOT NULL,
    "removedCfm25" DOUBLE PRECISION NOT NULL,
    "standardUncertaintyCfm25" DOUBLE PRECISION NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "RepairExperience_pkey" PRIMARY KEY ("organizationId","jobId")
);
ALTER TABLE "RepairExperience" ADD CONSTRAINT "RepairExperience_organizationId_jobId_fkey" FOREIGN KEY ("organizationId", "jobId") REFERENCES "Job"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;

DO $$
DECLARE name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['RepairCatalogueVersion', 'RepairExperience'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY own ON %I USING ("organizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL)',
      name
    );
  END LOOP;
END $$;
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "RepairCatalogueVersion"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
GRANT SELECT, INSERT ON "RepairCatalogueVersion" TO ductmend_app;
GRANT SELECT, INSERT, UPDATE, DELETE ON "RepairExperience" TO ductmend_app;

-- Who holds the link of a paper that was replaced must be told so: the paper that names it is in sight too.
CREATE POLICY newer ON "Proposal" FOR SELECT
  USING ("organizationId" = (SELECT ductmend_organization()) AND "supersedesId" = (SELECT ductmend_proposal()));
