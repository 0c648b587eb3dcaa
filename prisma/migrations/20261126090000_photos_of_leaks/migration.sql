-- Photos of leaks, known by the SHA-256 of their bytes; a job's document names them by it. A photo never changes.
CREATE TABLE "Photo" (
    "organizationId" UUID NOT NULL,
    "jobId" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "content" BYTEA NOT NULL,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "authorId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Photo_pkey" PRIMARY KEY ("organizationId","jobId","sha256"),
    CONSTRAINT "Photo_sha256_is_of_content" CHECK ("sha256" = encode(sha256("content"), 'hex')),
    CONSTRAINT "Photo_size" CHECK (octet_length("content") <= 1500000)
);
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_organizationId_jobId_fkey" FOREIGN KEY ("organizationId", "jobId") REFERENCES "Job"("organizationId", "id") ON DELETE NO ACTION ON UPDATE CASCADE;

ALTER TABLE "Photo" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "Photo" FORCE ROW LEVEL SECURITY;
CREATE POLICY own ON "Photo"
  USING ("organizationId" = (SELECT ductmend_organization()) AND (SELECT ductmend_proposal()) IS NULL);
-- What shows a stranger's face or a paper on the wall may have to go, so a photo can be removed but never changed.
GRANT SELECT, INSERT, DELETE ON "Photo" TO ductmend_app;
