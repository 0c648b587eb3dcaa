/** Names the shape of a result document; it changes when a reader of the old shape could not read the new one. */
export const RESULT_SCHEMA_VERSION = "ductmend.result/1";
