import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import exampleJob from "#lib/examples/inside-ducts-furnace.json";
import { API_BASE, type ApiOperation } from "#lib/exchange/api/api-operation.ts";
import { API_SCOPES } from "#lib/exchange/api/api-scope.ts";
import { describeFields } from "#lib/exchange/api/describe-fields.ts";
import { EXAMPLE_JOB, fillExample } from "#lib/exchange/api/fill-example.ts";
import { API_OPERATIONS } from "#lib/exchange/api/operations.ts";
import styles from "./api.module.css";

export const metadata: Metadata = { title: "Programming interface" };

const GROUPS = ["Calculate", "Jobs", "Claims"] as const;

/** Ids in braces stay for the reader to fill in; documents are shortened to their name where they are not at hand. */
function curlOf({ method, path, example, status }: ApiOperation): string {
  const at = path.replaceAll(/\{(\w+)\}/g, (whole, name: string) => example.path?.[name] ?? whole);
  const query = example.query ? `?${new URLSearchParams(example.query)}` : "";
  const body = fillExample(example.body, { [EXAMPLE_JOB.name]: exampleJob }) ?? example.body;
  return [
    `curl -X ${method} "http://127.0.0.1:3000${API_BASE}${at}${query}"`,
    `  -H "Authorization: Bearer $KEY"`,
    ...(status === 201 ? [`  -H "Idempotency-Key: $(uuidgen)"`] : []),
    ...(body === undefined
      ? []
      : [`  -H "Content-Type: application/json"`, `  --data '${JSON.stringify(body, null, 2)}'`]),
  ].join(" \\\n");
}

/** Text with what stands between backticks set as code. */
function Code({ text }: { text: string }) {
  return text.split("`").map((part, index) => (index % 2 === 1 ? <code key={part}>{part}</code> : part));
}

function Operation({ operation }: { operation: ApiOperation }) {
  const { operationId, method, path, title, description, scope, query, body, answer } = operation;
  const parts = [
    ...(query ? [{ caption: `${title}, in the address`, fields: describeFields(query) }] : []),
    ...(body ? [{ caption: `${title}, in the body`, fields: describeFields(body) }] : []),
    { caption: `${title}, in the answer`, fields: describeFields(answer) },
  ];
  return (
    <section id={operationId} aria-labelledby={`${operationId}-title`} className={styles.operation}>
      <h3 id={`${operationId}-title`}>{title}</h3>
      <p>
        <code>
          {method} {API_BASE}
          {path}
        </code>
      </p>
      <p>
        <Code text={description} /> Needs the scope <code>{scope}</code>.
      </p>
      {parts.map(({ caption, fields }) =>
        fields.length === 0 ? null : (
          <DataTable
            key={caption}
            caption={caption}
            isCardsWhenNarrow
            columns={[{ label: "Field" }, { label: "Is" }, { label: "Says" }]}
            rows={fields.map(({ name, type, isOptional, says }) => ({
              id: name,
              cells: [<code key="name">{name}</code>, isOptional ? `${type}, may be left out` : type, says],
            }))}
          />
        ),
      )}
      <Disclosure title={`Example of ${operationId}`}>
        <pre className={styles.code}>
          <code>{curlOf(operation)}</code>
        </pre>
      </Disclosure>
    </section>
  );
}

/** The programming interface in words, from the same list that answers it. */
export default function ApiPage() {
  return (
    <div className={styles.page}>
      <h1>Programming interface</h1>
      <p className={styles.lead}>
        Everything the screens calculate, and jobs and claims as they are stored, for programs. JSON in, JSON out.
      </p>
      <p className={styles.actions}>
        <LinkButton href="/api/keys">Make a key</LinkButton>
        <a href="/openapi.json">OpenAPI 3.1</a>
      </p>
      <h2>In short</h2>
      <ul>
        <li>
          Send <code>Authorization: Bearer KEY</code> with each request. A key acts as the person who made it and does
          only what its scopes say: {Object.keys(API_SCOPES).join(", ")}.
        </li>
        <li>
          Lists come in pages, the newest first. While an answer has <code>nextCursor</code>, ask again with it as{" "}
          <code>cursor</code>.
        </li>
        <li>
          What makes something new takes an <code>Idempotency-Key</code>, a name of your own for the request. Repeated
          with the same key it does its work once and answers the same; with other content it is refused.
        </li>
        <li>
          What goes wrong comes as problem details (RFC 9457): <code>type</code> names the kind, and <code>errors</code>{" "}
          each wrong value with what to do.
        </li>
      </ul>
      <nav aria-label="Operations">
        <ul className={styles.contents}>
          {API_OPERATIONS.map(({ operationId, title }) => (
            <li key={operationId}>
              <a href={`#${operationId}`}>{title}</a>
            </li>
          ))}
        </ul>
      </nav>
      {GROUPS.map((group) => (
        <section key={group} aria-labelledby={group}>
          <h2 id={group}>{group}</h2>
          {API_OPERATIONS.filter((each) => each.group === group).map((operation) => (
            <Operation key={operation.operationId} operation={operation} />
          ))}
        </section>
      ))}
      <section aria-labelledby="problems">
        <h2 id="problems">What can go wrong</h2>
        <DataTable
          caption="Every kind of problem, by its code"
          isCaptionHidden
          isCardsWhenNarrow
          columns={[
            { label: "Code" },
            { label: "Status", isNumeric: true },
            { label: "Means" },
            { label: "What to do" },
          ]}
          rows={Object.entries(ERROR_TABLE)
            .filter(([, { status }]) => status >= 400)
            .map(([code, { status, title, help }]) => ({
              id: code,
              cells: [
                <Link key="code" href={`/problems/${code}`}>
                  {code}
                </Link>,
                String(status),
                title,
                help,
              ],
            }))}
        />
      </section>
    </div>
  );
}
