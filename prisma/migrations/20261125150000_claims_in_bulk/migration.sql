-- Claims in bulk: what a claim shares with others found by one index, chunks of a batch, inspections, and the queue.

-- Row-level security lets no index answer "has one of these" (array operators are not leakproof), so what is compared
-- between claims stands one a row.
DROP INDEX "Claim_photoHashes_idx";
ALTER TABLE "Claim" DROP COLUMN "photoHashes";
ALTER TABLE "Claim" DROP COLUMN "gaugeSerialNumbers";
ALTER TABLE "Claim" ADD COLUMN "batchChunk" INTEGER;
DROP INDEX "Claim_batchId_idx";
CREATE INDEX "Claim_batchId_batchChunk_idx" ON "Claim"("batchId", "batchChunk");

CREATE TYPE "ClaimMarkKind" AS ENUM ('photo', 'instrument_day');

CREATE TABLE "ClaimMark" (
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "claimId" UUID NOT NULL,
    "kind" "ClaimMarkKind" NOT NULL,
    "mark" TEXT NOT NULL,

    CONSTRAINT "ClaimMark_pkey" PRIMARY KEY ("claimId", "kind", "mark")
);

CREATE TABLE "Inspection" (
    "id" UUID NOT NULL,
    "organizationId" UUID NOT NULL,
    "programOrganizationId" UUID NOT NULL,
    "claimId" UUID NOT NULL,
    "document" JSONB NOT NULL,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Inspection_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "ClaimMark_programOrganizationId_mark_idx" ON "ClaimMark"("programOrganizationId", "mark");
CREATE INDEX "Inspection_claimId_createdAt_idx" ON "Inspection"("claimId", "createdAt");
ALTER TABLE "ClaimMark" ADD CONSTRAINT "ClaimMark_claimId_organizationId_programOrganizationId_fkey" FOREIGN KEY ("claimId", "organizationId", "programOrganizationId") REFERENCES "Claim"("id", "organizationId", "programOrganizationId") ON DELETE NO ACTION ON UPDATE CASCADE;
ALTER TABLE "Inspection" ADD CONSTRAINT "Inspection_claimId_organizationId_programOrganizationId_fkey" FOREIGN KEY ("claimId", "organizationId", "programOrganizationId") REFERENCES "Claim"("id", "organizationId", "programOrganizationId") ON DELETE NO ACTION ON UPDATE CASCADE;

DO $$
DECLARE name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['ClaimMark', 'Inspection'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY both_sides ON %I USING ((SELECT ductmend_organization()) IN ("organizationId", "programOrganizationId") AND (SELECT ductmend_proposal()) IS NULL)',
      name
    );
    EXECUTE format(
      'CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()',
      name
    );
    EXECUTE format('GRANT SELECT, INSERT ON %I TO ductmend_app', name);
  END LOOP;
END $$;

-- ---------------------------------------------------------------------------------------------------------------------
-- The queue
-- ---------------------------------------------------------------------------------------------------------------------
-- Tables of pg-boss 10.4 as its own construction plan makes them (schema version 24), and the one queue. Made here, as
-- the owner, because the app may make no tables. A job carries ids only; what it is about stands behind row-level
-- security. A newer pg-boss that wants other tables comes with a migration of its own.
CREATE SCHEMA pgboss;

CREATE TYPE pgboss.job_state AS ENUM (
  'created',
  'retry',
  'active',
  'completed',
  'cancelled',
  'failed'
);

CREATE TABLE pgboss.version (
  version int primary key,
  maintained_on timestamp with time zone,
  cron_on timestamp with time zone,
  monitored_on timestamp with time zone
);

CREATE TABLE pgboss.queue (
  name text,
  policy text,
  retry_limit int,
  retry_delay int,
  retry_backoff bool,
  expire_seconds int,
  retention_minutes int,
  dead_letter text REFERENCES pgboss.queue (name),
  partition_name text,
  created_on timestamp with time zone not null default now(),
  updated_on timestamp with time zone not null default now(),
  PRIMARY KEY (name)
);

CREATE TABLE pgboss.schedule (
  name text REFERENCES pgboss.queue ON DELETE CASCADE,
  cron text not null,
  timezone text,
  data jsonb,
  options jsonb,
  created_on timestamp with time zone not null default now(),
  updated_on timestamp with time zone not null default now(),
  PRIMARY KEY (name)
);

CREATE TABLE pgboss.subscription (
  event text not null,
  name text not null REFERENCES pgboss.queue ON DELETE CASCADE,
  created_on timestamp with time zone not null default now(),
  updated_on timestamp with time zone not null default now(),
  PRIMARY KEY(event, name)
);

CREATE TABLE pgboss.job (
  id uuid not null default gen_random_uuid(),
  name text not null,
  priority integer not null default(0),
  data jsonb,
  state pgboss.job_state not null default('created'),
  retry_limit integer not null default(2),
  retry_count integer not null default(0),
  retry_delay integer not null default(0),
  retry_backoff boolean not null default false,
  start_after timestamp with time zone not null default now(),
  started_on timestamp with time zone,
  singleton_key text,
  singleton_on timestamp without time zone,
  expire_in interval not null default interval '15 minutes',
  created_on timestamp with time zone not null default now(),
  completed_on timestamp with time zone,
  keep_until timestamp with time zone NOT NULL default now() + interval '14 days',
  output jsonb,
  dead_letter text,
  policy text
) PARTITION BY LIST (name);
ALTER TABLE pgboss.job ADD PRIMARY KEY (name, id);
CREATE TABLE pgboss.archive (LIKE pgboss.job);
ALTER TABLE pgboss.archive ADD PRIMARY KEY (name, id);
ALTER TABLE pgboss.archive ADD archived_on timestamptz NOT NULL DEFAULT now();
CREATE INDEX archive_i1 ON pgboss.archive(archived_on);

CREATE FUNCTION pgboss.create_queue(queue_name text, options json)
RETURNS VOID AS
$$
DECLARE
  table_name varchar := 'j' || encode(sha224(queue_name::bytea), 'hex');
  queue_created_on timestamptz;
BEGIN

  WITH q as (
  INSERT INTO pgboss.queue (
    name,
    policy,
    retry_limit,
    retry_delay,
    retry_backoff,
    expire_seconds,
    retention_minutes,
    dead_letter,
    partition_name
  )
  VALUES (
    queue_name,
    options->>'policy',
    (options->>'retryLimit')::int,
    (options->>'retryDelay')::int,
    (options->>'retryBackoff')::bool,
    (options->>'expireInSeconds')::int,
    (options->>'retentionMinutes')::int,
    options->>'deadLetter',
    table_name
  )
  ON CONFLICT DO NOTHING
  RETURNING created_on
  )
  SELECT created_on into queue_created_on from q;

  IF queue_created_on IS NULL THEN
    RETURN;
  END IF;

  EXECUTE format('CREATE TABLE pgboss.%I (LIKE pgboss.job INCLUDING DEFAULTS)', table_name);

  EXECUTE format('ALTER TABLE pgboss.%1$I ADD PRIMARY KEY (name, id)', table_name);
  EXECUTE format('ALTER TABLE pgboss.%1$I ADD CONSTRAINT q_fkey FOREIGN KEY (name) REFERENCES pgboss.queue (name) ON DELETE RESTRICT DEFERRABLE INITIALLY DEFERRED', table_name);
  EXECUTE format('ALTER TABLE pgboss.%1$I ADD CONSTRAINT dlq_fkey FOREIGN KEY (dead_letter) REFERENCES pgboss.queue (name) ON DELETE RESTRICT DEFERRABLE INITIALLY DEFERRED', table_name);
  EXECUTE format('CREATE UNIQUE INDEX %1$s_i1 ON pgboss.%1$I (name, COALESCE(singleton_key, '''')) WHERE state = ''created'' AND policy = ''short''', table_name);
  EXECUTE format('CREATE UNIQUE INDEX %1$s_i2 ON pgboss.%1$I (name, COALESCE(singleton_key, '''')) WHERE state = ''active'' AND policy = ''singleton''', table_name);
  EXECUTE format('CREATE UNIQUE INDEX %1$s_i3 ON pgboss.%1$I (name, state, COALESCE(singleton_key, '''')) WHERE state <= ''active'' AND policy = ''stately''', table_name);
  EXECUTE format('CREATE UNIQUE INDEX %1$s_i4 ON pgboss.%1$I (name, singleton_on, COALESCE(singleton_key, '''')) WHERE state <> ''cancelled'' AND singleton_on IS NOT NULL', table_name);
  EXECUTE format('CREATE INDEX %1$s_i5 ON pgboss.%1$I (name, start_after) INCLUDE (priority, created_on, id) WHERE state < ''active''', table_name);

  EXECUTE format('ALTER TABLE pgboss.%I ADD CONSTRAINT cjc CHECK (name=%L)', table_name, queue_name);
  EXECUTE format('ALTER TABLE pgboss.job ATTACH PARTITION pgboss.%I FOR VALUES IN (%L)', table_name, queue_name);
END;
$$
LANGUAGE plpgsql;

CREATE FUNCTION pgboss.delete_queue(queue_name text)
RETURNS VOID AS
$$
DECLARE
  table_name varchar;
BEGIN
  WITH deleted as (
    DELETE FROM pgboss.queue
    WHERE name = queue_name
    RETURNING partition_name
  )
  SELECT partition_name from deleted INTO table_name;

  EXECUTE format('DROP TABLE IF EXISTS pgboss.%I', table_name);
END;
$$
LANGUAGE plpgsql;
INSERT INTO pgboss.version(version) VALUES ('24');

SELECT pgboss.create_queue('claims', '{"policy": "standard", "retryLimit": 100, "retryDelay": 0, "retryBackoff": false, "expireInSeconds": 60, "retentionMinutes": 20160}');

GRANT USAGE ON SCHEMA pgboss TO ductmend_app;
GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA pgboss TO ductmend_app;
