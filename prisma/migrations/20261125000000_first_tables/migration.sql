-- The first tables. Written from prisma/schema.prisma (a test holds the two together) and, from "Who sees what" on, by
-- hand. Applied by lib/store/migrate.ts inside one transaction; `prisma migrate deploy` applies it just the same.

CREATE TYPE "OrganizationKind" AS ENUM ('contractor', 'program');
CREATE TYPE "MemberRole" AS ENUM ('owner', 'estimator', 'crew', 'reviewer');
CREATE TYPE "JobState" AS ENUM ('draft', 'proposed', 'accepted', 'declined', 'sealed', 'verified', 'closed');
CREATE TYPE "ProposalEventKind" AS ENUM ('sent', 'seen', 'asked', 'answered', 'accepted', 'declined', 'expired', 'withdrawn');
CREATE TYPE "InstrumentKind" AS ENUM ('fan', 'gauge');
CREATE TYPE "ProgramContractorState" AS ENUM ('invited', 'active', 'ended');
CREATE TYPE "ClaimState" AS ENUM ('draft', 'submitted', 'in_review', 'question_open', 'approved', 'declined', 'paid', 'withdrawn');
CREATE TYPE "RecomputeOutcome" AS ENUM ('same', 'differs', 'invalid');
CREATE TYPE "BatchKind" AS ENUM ('import', 'recompute', 'replay');
CREATE TYPE "BatchState" AS ENUM ('waiting', 'running', 'finished', 'canceled', 'failed');

CREATE TABLE "Organization" (
    "id" UUID NOT NULL,
    "kind" "OrganizationKind" NOT NULL,
    "name" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "branding" JSONB NOT NULL DEFAULT '{}',
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Organization_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Member" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "role" "MemberRole" NOT NULL,
    "email" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Member_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Client" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "phone" TEXT,
    "note" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Client_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Property" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "clientId" UUID,
    "addressLine" TEXT NOT NULL,
    "city" TEXT NOT NULL,
    "stateCode" TEXT NOT NULL,
    "zip" TEXT NOT NULL,
    "premiseKey" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Property_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Job" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "clientId" UUID,
    "propertyId" UUID,
    "title" TEXT NOT NULL,
    "state" "JobState" NOT NULL DEFAULT 'draft',
    "currentRevision" INTEGER NOT NULL DEFAULT 0,
    "searchText" TEXT NOT NULL DEFAULT '',
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "exampleKey" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "JobRevision" (
    "organizationId" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "contentHash" TEXT NOT NULL,
    "engineVersion" TEXT NOT NULL,
    "result" JSONB,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "JobRevision_pkey" PRIMARY KEY ("jobId","revision")
);

CREATE TABLE "Proposal" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "jobRevision" INTEGER NOT NULL,
    "engineVersion" TEXT NOT NULL,
    "result" JSONB NOT NULL,
    "view" JSONB NOT NULL,
    "contentHash" TEXT NOT NULL,
    "linkTokenHash" TEXT NOT NULL,
    "supersedesId" UUID,
    "issuedById" UUID NOT NULL,
    "issuedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Proposal_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ProposalEvent" (
    "id" BIGSERIAL NOT NULL,
    "organizationId" UUID NOT NULL,
    "proposalId" UUID NOT NULL,
    "kind" "ProposalEventKind" NOT NULL,
    "payload" JSONB NOT NULL DEFAULT '{}',
    "actorId" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ProposalEvent_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Instrument" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "kind" "InstrumentKind" NOT NULL,
    "label" TEXT NOT NULL,
    "serialNumber" TEXT,
    "document" JSONB NOT NULL,
    "calibratedOn" DATE,
    "validUntil" DATE,
    "retiredAt" TIMESTAMPTZ(3),
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Instrument_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "PriceBookVersion" (
    "organizationId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "effectiveOn" DATE NOT NULL,
    "document" JSONB NOT NULL,
    "contentHash" TEXT NOT NULL,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "PriceBookVersion_pkey" PRIMARY KEY ("organizationId","version")
);

CREATE TABLE "Program" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "description" TEXT NOT NULL DEFAULT '',
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Program_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ProgramRule" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "programId" UUID NOT NULL,
    "effectiveOn" DATE NOT NULL,
    "document" JSONB NOT NULL,
    "contentHash" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ProgramRule_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ProgramContractor" (
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "programId" UUID NOT NULL,
    "state" "ProgramContractorState" NOT NULL DEFAULT 'invited',
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ProgramContractor_pkey" PRIMARY KEY ("programId","organizationId")
);

CREATE TABLE "Claim" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "programId" UUID NOT NULL,
    "jobId" UUID,
    "batchId" UUID,
    "reference" TEXT NOT NULL,
    "state" "ClaimState" NOT NULL DEFAULT 'submitted',
    "packet" TEXT NOT NULL,
    "packetHash" TEXT NOT NULL,
    "engineVersion" TEXT NOT NULL,
    "premiseKey" TEXT NOT NULL,
    "readingsHash" TEXT NOT NULL,
    "photoHashes" TEXT[],
    "gaugeSerialNumbers" TEXT[],
    "completedOn" DATE NOT NULL,
    "beforeToOutsideCfm25" DOUBLE PRECISION NOT NULL,
    "afterToOutsideCfm25" DOUBLE PRECISION NOT NULL,
    "savedElectricityKWh" DOUBLE PRECISION NOT NULL,
    "savedNaturalGasTherms" DOUBLE PRECISION NOT NULL,
    "rebateUsdCents" INTEGER NOT NULL,
    "recomputeOutcome" "RecomputeOutcome",
    "recomputedAt" TIMESTAMPTZ(3),
    "recomputedEngineVersion" TEXT,
    "flagCount" INTEGER NOT NULL DEFAULT 0,
    "submittedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Claim_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ClaimFlag" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "claimId" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "evidence" JSONB NOT NULL,
    "innocentExplanation" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "settledAt" TIMESTAMPTZ(3),

    CONSTRAINT "ClaimFlag_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ClaimComment" (
    "id" BIGSERIAL NOT NULL,
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "claimId" UUID NOT NULL,
    "authorId" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ClaimComment_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ClaimDecision" (
    "id" BIGSERIAL NOT NULL,
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "claimId" UUID NOT NULL,
    "fromState" "ClaimState" NOT NULL,
    "toState" "ClaimState" NOT NULL,
    "reason" TEXT NOT NULL,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ClaimDecision_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ClaimBatch" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "kind" "BatchKind" NOT NULL,
    "state" "BatchState" NOT NULL DEFAULT 'waiting',
    "sourceName" TEXT NOT NULL,
    "options" JSONB NOT NULL DEFAULT '{}',
    "totalCount" INTEGER,
    "startedById" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "cancelRequestedAt" TIMESTAMPTZ(3),
    "finishedAt" TIMESTAMPTZ(3),

    CONSTRAINT "ClaimBatch_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "BatchProgress" (
    "organizationId" UUID NOT NULL,
    "batchId" UUID NOT NULL,
    "chunk" INTEGER NOT NULL,
    "state" "BatchState" NOT NULL DEFAULT 'waiting',
    "claimCount" INTEGER NOT NULL DEFAULT 0,
    "sameCount" INTEGER NOT NULL DEFAULT 0,
    "differsCount" INTEGER NOT NULL DEFAULT 0,
    "invalidCount" INTEGER NOT NULL DEFAULT 0,
    "detail" JSONB NOT NULL DEFAULT '{}',
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "BatchProgress_pkey" PRIMARY KEY ("batchId","chunk")
);

CREATE TABLE "InspectionSample" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "programId" UUID NOT NULL,
    "seed" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "InspectionSample_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ApiKey" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "keyHash" TEXT NOT NULL,
    "scopes" TEXT[],
    "createdById" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "lastUsedAt" TIMESTAMPTZ(3),
    "revokedAt" TIMESTAMPTZ(3),

    CONSTRAINT "ApiKey_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "IdempotencyKey" (
    "organizationId" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "requestHash" TEXT NOT NULL,
    "responseStatus" INTEGER NOT NULL,
    "responseBody" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "IdempotencyKey_pkey" PRIMARY KEY ("organizationId","key")
);

CREATE TABLE "AuditLog" (
    "id" BIGSERIAL NOT NULL,
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID,
    "actorId" UUID,
    "action" TEXT NOT NULL,
    "subjectKind" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "detail" JSONB NOT NULL DEFAULT '{}',
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "AuditLog_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "RepairExperience" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "siteId" TEXT NOT NULL,
    "repairId" TEXT NOT NULL,
    "beforeCfm25" DOUBLE PRECISION NOT NULL,
    "afterCfm25" DOUBLE PRECISION NOT NULL,
    "labourHours" DOUBLE PRECISION NOT NULL,
    "materialCostUsdCents" INTEGER NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "RepairExperience_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "Member_organizationId_id_key" ON "Member"("organizationId", "id");
CREATE UNIQUE INDEX "Client_organizationId_id_key" ON "Client"("organizationId", "id");
CREATE INDEX "Property_organizationId_premiseKey_idx" ON "Property"("organizationId", "premiseKey");
CREATE UNIQUE INDEX "Property_organizationId_id_key" ON "Property"("organizationId", "id");
CREATE INDEX "Job_organizationId_createdAt_id_idx" ON "Job"("organizationId", "createdAt" DESC, "id");
CREATE UNIQUE INDEX "Job_organizationId_id_key" ON "Job"("organizationId", "id");
CREATE UNIQUE INDEX "Job_organizationId_exampleKey_key" ON "Job"("organizationId", "exampleKey");
CREATE UNIQUE INDEX "Proposal_linkTokenHash_key" ON "Proposal"("linkTokenHash");
CREATE INDEX "Proposal_organizationId_jobId_issuedAt_idx" ON "Proposal"("organizationId", "jobId", "issuedAt" DESC);
CREATE UNIQUE INDEX "Proposal_organizationId_id_key" ON "Proposal"("organizationId", "id");
CREATE INDEX "ProposalEvent_organizationId_proposalId_id_idx" ON "ProposalEvent"("organizationId", "proposalId", "id");
CREATE INDEX "Instrument_organizationId_kind_idx" ON "Instrument"("organizationId", "kind");
CREATE UNIQUE INDEX "Program_organizationId_id_key" ON "Program"("organizationId", "id");
CREATE INDEX "ProgramRule_organizationId_programId_effectiveOn_idx" ON "ProgramRule"("organizationId", "programId", "effectiveOn");
CREATE INDEX "ProgramContractor_organizationId_idx" ON "ProgramContractor"("organizationId");
CREATE INDEX "ProgramContractor_programOrganizationId_idx" ON "ProgramContractor"("programOrganizationId");
CREATE INDEX "Claim_programOrganizationId_submittedAt_id_idx" ON "Claim"("programOrganizationId", "submittedAt" DESC, "id");
CREATE INDEX "Claim_programOrganizationId_state_idx" ON "Claim"("programOrganizationId", "state");
CREATE INDEX "Claim_organizationId_submittedAt_id_idx" ON "Claim"("organizationId", "submittedAt" DESC, "id");
CREATE INDEX "Claim_programOrganizationId_premiseKey_idx" ON "Claim"("programOrganizationId", "premiseKey");
CREATE INDEX "Claim_programOrganizationId_readingsHash_idx" ON "Claim"("programOrganizationId", "readingsHash");
CREATE INDEX "Claim_batchId_idx" ON "Claim"("batchId");
CREATE INDEX "Claim_photoHashes_idx" ON "Claim" USING GIN ("photoHashes");
CREATE UNIQUE INDEX "Claim_programId_organizationId_reference_key" ON "Claim"("programId", "organizationId", "reference");
CREATE UNIQUE INDEX "Claim_id_organizationId_programOrganizationId_key" ON "Claim"("id", "organizationId", "programOrganizationId");
CREATE INDEX "ClaimFlag_programOrganizationId_code_idx" ON "ClaimFlag"("programOrganizationId", "code");
CREATE UNIQUE INDEX "ClaimFlag_claimId_code_key" ON "ClaimFlag"("claimId", "code");
CREATE INDEX "ClaimComment_claimId_id_idx" ON "ClaimComment"("claimId", "id");
CREATE INDEX "ClaimDecision_claimId_id_idx" ON "ClaimDecision"("claimId", "id");
CREATE INDEX "ClaimBatch_organizationId_createdAt_idx" ON "ClaimBatch"("organizationId", "createdAt" DESC);
CREATE UNIQUE INDEX "ClaimBatch_organizationId_id_key" ON "ClaimBatch"("organizationId", "id");
CREATE INDEX "InspectionSample_organizationId_programId_createdAt_idx" ON "InspectionSample"("organizationId", "programId", "createdAt");
CREATE UNIQUE INDEX "ApiKey_keyHash_key" ON "ApiKey"("keyHash");
CREATE INDEX "ApiKey_organizationId_idx" ON "ApiKey"("organizationId");
CREATE INDEX "AuditLog_organizationId_subjectKind_subjectId_id_idx" ON "AuditLog"("organizationId", "subjectKind", "subjectId", "id");
CREATE INDEX "AuditLog_organizationId_id_idx" ON "AuditLog"("organizationId", "id");
CREATE INDEX "AuditLog_programOrganizationId_id_idx" ON "AuditLog"("programOrganizationId", "id");
CREATE INDEX "RepairExperience_organizationId_repairId_idx" ON "RepairExperience"("organizationId", "repairId");
ALTER TABLE "Member" ADD CONSTRAINT "Member_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Client" ADD CONSTRAINT "Client_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Property" ADD CONSTRAINT "Property_organizationId_clientId_fkey" FOREIGN KEY ("organizationId", "clientId") REFERENCES "Client"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Property" ADD CONSTRAINT "Property_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Job" ADD CONSTRAINT "Job_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Job" ADD CONSTRAINT "Job_organizationId_clientId_fkey" FOREIGN KEY ("organizationId", "clientId") REFERENCES "Client"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Job" ADD CONSTRAINT "Job_organizationId_propertyId_fkey" FOREIGN KEY ("organizationId", "propertyId") REFERENCES "Property"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "JobRevision" ADD CONSTRAINT "JobRevision_organizationId_jobId_fkey" FOREIGN KEY ("organizationId", "jobId") REFERENCES "Job"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_organizationId_jobId_fkey" FOREIGN KEY ("organizationId", "jobId") REFERENCES "Job"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_jobId_jobRevision_fkey" FOREIGN KEY ("jobId", "jobRevision") REFERENCES "JobRevision"("jobId", "revision") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_organizationId_supersedesId_fkey" FOREIGN KEY ("organizationId", "supersedesId") REFERENCES "Proposal"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ProposalEvent" ADD CONSTRAINT "ProposalEvent_organizationId_proposalId_fkey" FOREIGN KEY ("organizationId", "proposalId") REFERENCES "Proposal"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Instrument" ADD CONSTRAINT "Instrument_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "PriceBookVersion" ADD CONSTRAINT "PriceBookVersion_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Program" ADD CONSTRAINT "Program_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ProgramRule" ADD CONSTRAINT "ProgramRule_organizationId_programId_fkey" FOREIGN KEY ("organizationId", "programId") REFERENCES "Program"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ProgramContractor" ADD CONSTRAINT "ProgramContractor_programOrganizationId_programId_fkey" FOREIGN KEY ("programOrganizationId", "programId") REFERENCES "Program"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_programOrganizationId_programId_fkey" FOREIGN KEY ("programOrganizationId", "programId") REFERENCES "Program"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_programId_organizationId_fkey" FOREIGN KEY ("programId", "organizationId") REFERENCES "ProgramContractor"("programId", "organizationId") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ClaimFlag" ADD CONSTRAINT "ClaimFlag_claimId_organizationId_programOrganizationId_fkey" FOREIGN KEY ("claimId", "organizationId", "programOrganizationId") REFERENCES "Claim"("id", "organizationId", "programOrganizationId") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ClaimComment" ADD CONSTRAINT "ClaimComment_claimId_organizationId_programOrganizationId_fkey" FOREIGN KEY ("claimId", "organizationId", "programOrganizationId") REFERENCES "Claim"("id", "organizationId", "programOrganizationId") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ClaimDecision" ADD CONSTRAINT "ClaimDecision_claimId_organizationId_programOrganizationId_fkey" FOREIGN KEY ("claimId", "organizationId", "programOrganizationId") REFERENCES "Claim"("id", "organizationId", "programOrganizationId") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ClaimBatch" ADD CONSTRAINT "ClaimBatch_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "BatchProgress" ADD CONSTRAINT "BatchProgress_organizationId_batchId_fkey" FOREIGN KEY ("organizationId", "batchId") REFERENCES "ClaimBatch"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "ApiKey" ADD CONSTRAINT "ApiKey_organizationId_fkey" FOREIGN KEY ("organizationId") REFERENCES "Organization"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------------------------------
-- Who sees what
-- ---------------------------------------------------------------------------------------------------------------------
-- The app works as ductmend_app: it owns nothing, is not superuser and cannot pass by row-level security. Each unit of
-- work is one transaction that first says for whom it acts, with set_config('ductmend.…', …, true):
--   ductmend.organization_id  the organization; without it every table is empty
--   ductmend.actor_id         the person, for the audit log
--   ductmend.proposal_id      set when a homeowner came by a link: then nothing but this one proposal is in sight

DO $$
BEGIN
  IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = 'ductmend_app') THEN
    CREATE ROLE ductmend_app NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS;
  END IF;
END $$;

GRANT USAGE ON SCHEMA public TO ductmend_app;

CREATE FUNCTION ductmend_organization() RETURNS uuid LANGUAGE sql STABLE
  AS $$ SELECT nullif(current_setting('ductmend.organization_id', true), '')::uuid $$;

CREATE FUNCTION ductmend_proposal() RETURNS uuid LANGUAGE sql STABLE
  AS $$ SELECT nullif(current_setting('ductmend.proposal_id', true), '')::uuid $$;

-- Tables of one organization alone.
DO $$
DECLARE name text;
BEGIN
  FOREACH name IN ARRAY ARRAY[
    'Member', 'Client', 'Property', 'Job', 'JobRevision', 'Instrument', 'PriceBookVersion', 'ClaimBatch',
    'BatchProgress', 'InspectionSample', 'ApiKey', 'IdempotencyKey', 'RepairExperience'
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY own ON %I USING ("organizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL)',
      name
    );
  END LOOP;
END $$;

-- Tables of a claim, which its contractor and the program both see, and in which both write.
DO $$
DECLARE name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['Claim', 'ClaimFlag', 'ClaimComment', 'ClaimDecision'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY both_sides ON %I USING ((SELECT ductmend_organization()) IN ("organizationId", "programOrganizationId") AND (SELECT ductmend_proposal()) IS NULL)',
      name
    );
  END LOOP;
END $$;

-- A program invites; both sides see the invitation and may answer or end it.
ALTER TABLE "ProgramContractor" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "ProgramContractor" FORCE ROW LEVEL SECURITY;
CREATE POLICY both_see ON "ProgramContractor" FOR SELECT
  USING ((SELECT ductmend_organization()) IN ("organizationId", "programOrganizationId") AND (SELECT ductmend_proposal()) IS NULL);
CREATE POLICY both_answer ON "ProgramContractor" FOR UPDATE
  USING ((SELECT ductmend_organization()) IN ("organizationId", "programOrganizationId") AND (SELECT ductmend_proposal()) IS NULL);
CREATE POLICY program_invites ON "ProgramContractor" FOR INSERT
  WITH CHECK ("programOrganizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);

-- An organization sees itself and those it shares a program with. It writes itself alone.
ALTER TABLE "Organization" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "Organization" FORCE ROW LEVEL SECURITY;
CREATE POLICY own ON "Organization" FOR SELECT USING ("id" = (SELECT ductmend_organization()));
CREATE POLICY partners ON "Organization" FOR SELECT USING (
  (SELECT ductmend_proposal()) IS NULL AND EXISTS (
    SELECT 1 FROM "ProgramContractor" p
    WHERE (p."organizationId" = "Organization"."id" AND p."programOrganizationId" = (SELECT ductmend_organization()))
       OR (p."programOrganizationId" = "Organization"."id" AND p."organizationId" = (SELECT ductmend_organization()))
  )
);
CREATE POLICY own_insert ON "Organization" FOR INSERT
  WITH CHECK ("id" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);
CREATE POLICY own_update ON "Organization" FOR UPDATE
  USING ("id" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);

-- A program and its rules are read by the contractors it invited.
ALTER TABLE "Program" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "Program" FORCE ROW LEVEL SECURITY;
CREATE POLICY own ON "Program"
  USING ("organizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);
CREATE POLICY invited ON "Program" FOR SELECT USING (
  (SELECT ductmend_proposal()) IS NULL AND EXISTS (
    SELECT 1 FROM "ProgramContractor" p
    WHERE p."programId" = "Program"."id" AND p."organizationId" = (SELECT ductmend_organization())
  )
);

ALTER TABLE "ProgramRule" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "ProgramRule" FORCE ROW LEVEL SECURITY;
CREATE POLICY own ON "ProgramRule"
  USING ("organizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);
CREATE POLICY invited ON "ProgramRule" FOR SELECT USING (
  (SELECT ductmend_proposal()) IS NULL AND EXISTS (
    SELECT 1 FROM "ProgramContractor" p
    WHERE p."programId" = "ProgramRule"."programId" AND p."organizationId" = (SELECT ductmend_organization())
  )
);

-- A homeowner who came by a link sees that proposal and its events, and may add events.
ALTER TABLE "Proposal" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "Proposal" FORCE ROW LEVEL SECURITY;
CREATE POLICY seen ON "Proposal" FOR SELECT USING (
  "organizationId" = (SELECT ductmend_organization())
  AND ((SELECT ductmend_proposal()) IS NULL OR "id" = (SELECT ductmend_proposal()))
);
CREATE POLICY issued ON "Proposal" FOR INSERT
  WITH CHECK ("organizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);

ALTER TABLE "ProposalEvent" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "ProposalEvent" FORCE ROW LEVEL SECURITY;
CREATE POLICY own ON "ProposalEvent" USING (
  "organizationId" = (SELECT ductmend_organization())
  AND ((SELECT ductmend_proposal()) IS NULL OR "proposalId" = (SELECT ductmend_proposal()))
);

-- The audit log: everybody who acts adds to it; a homeowner does not read it.
ALTER TABLE "AuditLog" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "AuditLog" FORCE ROW LEVEL SECURITY;
CREATE POLICY seen ON "AuditLog" FOR SELECT
  USING ((SELECT ductmend_organization()) IN ("organizationId", "programOrganizationId") AND (SELECT ductmend_proposal()) IS NULL);
CREATE POLICY added ON "AuditLog" FOR INSERT WITH CHECK ("organizationId" = (SELECT ductmend_organization()));

-- ---------------------------------------------------------------------------------------------------------------------
-- History stays as it was
-- ---------------------------------------------------------------------------------------------------------------------
-- Twice over: the app has no privilege to change these tables, and a trigger refuses it to the owner too.

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only', TG_TABLE_NAME USING ERRCODE = 'insufficient_privilege';
END $$;

DO $$
DECLARE name text;
BEGIN
  FOREACH name IN ARRAY ARRAY[
    'JobRevision', 'Proposal', 'ProposalEvent', 'PriceBookVersion', 'ProgramRule', 'ClaimComment', 'ClaimDecision',
    'InspectionSample', 'AuditLog'
  ] LOOP
    EXECUTE format(
      'CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()',
      name
    );
    EXECUTE format('GRANT SELECT, INSERT ON %I TO ductmend_app', name);
  END LOOP;
  FOREACH name IN ARRAY ARRAY[
    'Organization', 'Member', 'Client', 'Property', 'Job', 'Instrument', 'Program', 'ProgramContractor', 'ClaimFlag',
    'ClaimBatch', 'BatchProgress', 'ApiKey', 'IdempotencyKey', 'RepairExperience'
  ] LOOP
    EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO ductmend_app', name);
  END LOOP;
END $$;

-- Of a claim only its way through the program changes; nobody edits a contractor's numbers.
GRANT SELECT, INSERT ON "Claim" TO ductmend_app;
GRANT UPDATE (
  "state", "recomputeOutcome", "recomputedAt", "recomputedEngineVersion", "flagCount", "updatedAt"
) ON "Claim" TO ductmend_app;
CREATE FUNCTION refuse_claim_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (to_jsonb(NEW) - ARRAY['state', 'recomputeOutcome', 'recomputedAt', 'recomputedEngineVersion', 'flagCount', 'updatedAt'])
     IS DISTINCT FROM
     (to_jsonb(OLD) - ARRAY['state', 'recomputeOutcome', 'recomputedAt', 'recomputedEngineVersion', 'flagCount', 'updatedAt'])
  THEN
    RAISE EXCEPTION 'a submitted claim does not change' USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER packet_stays BEFORE UPDATE ON "Claim" FOR EACH ROW EXECUTE FUNCTION refuse_claim_change();
CREATE TRIGGER claim_stays BEFORE DELETE OR TRUNCATE ON "Claim" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO ductmend_app;

-- ---------------------------------------------------------------------------------------------------------------------
-- The two doors that open before it is known for whom
-- ---------------------------------------------------------------------------------------------------------------------
-- Each takes a SHA-256 and says where to go on. They run as the tables' owner, who is bound by the policies too and may
-- see just the row whose hash was given.

CREATE POLICY by_link ON "Proposal" FOR SELECT TO CURRENT_USER
  USING ("linkTokenHash" = current_setting('ductmend.link_token_hash', true));
CREATE POLICY by_key ON "ApiKey" FOR SELECT TO CURRENT_USER
  USING ("keyHash" = current_setting('ductmend.api_key_hash', true));

CREATE FUNCTION resolve_proposal_link(token_hash text) RETURNS TABLE ("organizationId" uuid, "proposalId" uuid)
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM set_config('ductmend.link_token_hash', token_hash, true);
  RETURN QUERY SELECT p."organizationId", p."id" FROM "Proposal" p WHERE p."linkTokenHash" = token_hash;
  PERFORM set_config('ductmend.link_token_hash', '', true);
END $$;

CREATE FUNCTION resolve_api_key(key_hash text)
  RETURNS TABLE ("organizationId" uuid, "apiKeyId" uuid, "createdById" uuid, "scopes" text[])
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM set_config('ductmend.api_key_hash', key_hash, true);
  RETURN QUERY SELECT k."organizationId", k."id", k."createdById", k."scopes" FROM "ApiKey" k
    WHERE k."keyHash" = key_hash AND k."revokedAt" IS NULL;
  PERFORM set_config('ductmend.api_key_hash', '', true);
END $$;

REVOKE ALL ON FUNCTION resolve_proposal_link(text), resolve_api_key(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION resolve_proposal_link(text), resolve_api_key(text) TO ductmend_app;
