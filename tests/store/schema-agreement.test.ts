import { readFileSync } from "node:fs";
import type pg from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type TemporaryDatabase, temporaryDatabase } from "./temporary-database.ts";

/**
 * prisma/schema.prisma and the migrations describe one database twice. What the migrations make is read back from the
 * server's own catalog and compared with the schema, column by column, index by index.
 */
let database: TemporaryDatabase;
let owner: pg.Client;

beforeAll(async () => {
  database = await temporaryDatabase();
  owner = await database.connectAs("owner");
});
afterAll(async () => {
  await owner.end();
  await database.remove();
});

const SCHEMA = readFileSync("prisma/schema.prisma", "utf8");

const COLUMN_TYPES: Record<string, string> = {
  String: "text",
  "String @db.Uuid": "uuid",
  Int: "integer",
  BigInt: "bigint",
  Float: "double precision",
  Boolean: "boolean",
  Json: "jsonb",
  Bytes: "bytea",
  "DateTime @db.Timestamptz(3)": "timestamp(3) with time zone",
  "DateTime @db.Date": "date",
};

function blocks(kind: "model" | "enum"): Map<string, string[]> {
  const found = SCHEMA.matchAll(new RegExp(`^${kind} (\\w+) \\{\\n([\\s\\S]*?)\\n\\}`, "gm"));
  return new Map(
    [...found].map(([, name, body]) => [
      name!,
      body!
        .split("\n")
        .map((line) => line.trim())
        .filter((line) => line && !line.startsWith("//")),
    ]),
  );
}

const MODELS = blocks("model");
const ENUMS = blocks("enum");

/** "Table.column type [not null]" for every column that a schema text describes. */
function schemaColumns(models = MODELS): string[] {
  return [...models].flatMap(([model, lines]) =>
    lines.flatMap((line) => {
      const [, name, type, mark] = line.match(/^(\w+)\s+(\w+)(\?|\[\])?/) ?? [];
      if (!name || !type || MODELS.has(type)) return [];
      const native = line.match(/@db\.\w+(\(\d+\))?/)?.[0];
      const column = ENUMS.has(type) ? `"${type}"` : COLUMN_TYPES[native ? `${type} ${native}` : type];
      if (!column) throw new Error(`This test does not know the type of ${model}.${name}`);
      // Prisma lets a list be null in the database and reads it as empty.
      const isRequired = mark === undefined;
      return [`${model}.${name} ${column}${mark === "[]" ? "[]" : ""}${isRequired ? " not null" : ""}`];
    }),
  );
}

async function databaseColumns(): Promise<string[]> {
  const { rows } = await owner.query<{ line: string }>(
    `SELECT c.relname || '.' || a.attname || ' ' || format_type(a.atttypid, a.atttypmod) || CASE WHEN a.attnotnull THEN ' not null' ELSE '' END AS line
     FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid
     WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND c.relname <> '_prisma_migrations'
       AND a.attnum > 0 AND NOT a.attisdropped`,
  );
  return rows.map((row) => row.line);
}

test("every column has the same name, type and obligation in both", async () => {
  const expected = schemaColumns();
  expect(expected.length).toBeGreaterThan(200);
  expect((await databaseColumns()).sort()).toEqual(expected.sort());
});

test("a column that only the schema has is found (planted)", async () => {
  const planted = new Map(MODELS).set("Job", [...MODELS.get("Job")!, "planted String"]);
  const database = new Set(await databaseColumns());
  expect(schemaColumns(planted).filter((line) => !database.has(line))).toEqual(["Job.planted text not null"]);
});

test("every enum has the same values in the same order in both", async () => {
  const { rows } = await owner.query<{ name: string; values: string[] }>(
    `SELECT t.typname AS name, array_agg(e.enumlabel::text ORDER BY e.enumsortorder) AS values
     FROM pg_type t JOIN pg_enum e ON e.enumtypid = t.oid
     WHERE t.typnamespace = 'public'::regnamespace GROUP BY t.typname`,
  );
  expect(rows.length).toBeGreaterThan(5);
  expect(new Map(rows.map((row) => [row.name, row.values]))).toEqual(ENUMS);
});

test("every key and index that the schema names is in the database", async () => {
  const { rows } = await owner.query<{ name: string; definition: string }>(
    `SELECT tablename AS name, indexdef AS definition FROM pg_indexes WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'`,
  );
  const inDatabase = rows.map((row) => {
    const columns = row.definition.match(/USING \w+ \((.*)\)$/)?.[1]?.replaceAll('"', "");
    return `${row.name} ${row.definition.startsWith("CREATE UNIQUE") ? "unique " : ""}(${columns})`;
  });
  const inSchema = [...MODELS].flatMap(([model, lines]) =>
    lines.flatMap((line) => {
      const [, ownField] = line.match(/^(\w+) .*@(?:id|unique)\b/) ?? [];
      if (ownField) return [`${model} unique (${ownField})`];
      const [, kind, list] = line.match(/^@@(id|unique|index)\(\[(.*?)\]/) ?? [];
      if (!kind || list === undefined) return [];
      const columns = list.replaceAll("(sort: Desc)", " DESC");
      return [`${model} ${kind === "index" ? "" : "unique "}(${columns})`];
    }),
  );
  expect(inSchema.length).toBeGreaterThan(40);
  expect(inDatabase.sort()).toEqual(inSchema.sort());
});

test("every reference that the schema names is a foreign key, and there is no other", async () => {
  const { rows } = await owner.query<{ line: string }>(
    `SELECT conrelid::regclass || ' ' || pg_get_constraintdef(oid) AS line FROM pg_constraint
     WHERE contype = 'f' AND connamespace = 'public'::regnamespace`,
  );
  const inDatabase = rows.map((row) => row.line.replaceAll('"', "").replace(/ ON UPDATE.*$/, ""));
  const inSchema = [...MODELS].flatMap(([model, lines]) =>
    lines.flatMap((line) => {
      const [, target, own, theirs] = line.match(/^\w+\s+(\w+)\??\s.*fields: \[(.*?)\], references: \[(.*?)\]/) ?? [];
      return target ? [`${model} FOREIGN KEY (${own}) REFERENCES ${target}(${theirs})`] : [];
    }),
  );
  expect(inSchema.length).toBeGreaterThan(20);
  expect(inDatabase.sort()).toEqual(inSchema.sort());
});
