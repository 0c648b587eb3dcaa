import { randomUUID } from "node:crypto";
import { premiseKey } from "#lib/job/premise-key.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export interface ClientRecord {
  id: string;
  name: string;
  email: string | null;
  phone: string | null;
  note: string | null;
}

export interface PropertyRecord {
  id: string;
  clientId: string | null;
  addressLine: string;
  city: string;
  stateCode: string;
  zip: string;
  premiseKey: string;
}

export type NewClient = Pick<ClientRecord, "name"> & Partial<Omit<ClientRecord, "id" | "name">>;
export type NewProperty = Omit<PropertyRecord, "id" | "premiseKey">;

const CLIENT_FIELDS = { id: true, name: true, email: true, phone: true, note: true } as const;
const PROPERTY_FIELDS = {
  id: true,
  clientId: true,
  addressLine: true,
  city: true,
  stateCode: true,
  zip: true,
  premiseKey: true,
} as const;

export function clients({ sql, identity }: UnitOfWork) {
  const { organizationId } = identity;
  return {
    async create(client: NewClient): Promise<ClientRecord> {
      return await sql.client.create({ data: { id: randomUUID(), organizationId, ...client }, select: CLIENT_FIELDS });
    },

    async find(id: string): Promise<ClientRecord> {
      const row = await sql.client.findUnique({ where: { id: requireId(id, "client") }, select: CLIENT_FIELDS });
      if (!row) throw notFound("client");
      return row;
    },

    async list(): Promise<ClientRecord[]> {
      return await sql.client.findMany({ select: CLIENT_FIELDS, orderBy: [{ name: "asc" }, { id: "asc" }] });
    },

    async update(id: string, changes: Partial<NewClient>): Promise<ClientRecord> {
      const { count } = await sql.client.updateMany({ where: { id: requireId(id, "client") }, data: changes });
      if (count === 0) throw notFound("client");
      return await this.find(id);
    },

    async addProperty(property: NewProperty): Promise<PropertyRecord> {
      return await sql.property.create({
        data: { id: randomUUID(), organizationId, ...property, premiseKey: premiseKey(property) },
        select: PROPERTY_FIELDS,
      });
    },

    async findProperty(id: string): Promise<PropertyRecord> {
      const row = await sql.property.findUnique({ where: { id: requireId(id, "property") }, select: PROPERTY_FIELDS });
      if (!row) throw notFound("property");
      return row;
    },
  };
}
