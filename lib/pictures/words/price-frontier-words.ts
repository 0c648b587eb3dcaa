import type { Language } from "../scene.ts";

export interface PriceFrontierWords {
  title: string;
  note: string;
  price: string;
  leakage: string;
  target: string;
  today: string;
  caption: string;
  columns: readonly [string, string, string, string];
  meets: string;
  misses: string;
  noTarget: string;
  none: string;
  cheapest(values: { label: string; price: string; target: string; cfm: string }): string;
  outOfReach(values: { target: string; cfm: string }): string;
  plain(values: { low: string; high: string }): string;
  point(values: { label: string; price: string; cfm: string }): string;
}

const EN: PriceFrontierWords = {
  title: "What more money buys",
  note: "Each point is a set of repairs; no other set leaks less for its price. The bar through it runs from the good to the bad tenth of outcomes.",
  price: "Price ($)",
  leakage: "Leakage left at 25 Pa (cfm)",
  target: "target",
  today: "today",
  caption: "Sets of repairs, cheapest first",
  columns: ["Set of repairs", "Price ($)", "Leakage left at 25 Pa (cfm)", "Target"],
  meets: "reached",
  misses: "missed",
  noTarget: "none set",
  none: "No set of repairs yet.",
  cheapest: ({ label, price, target, cfm }) =>
    `The cheapest that should get to the target of ${target} is “${label}”: ${price}, leaving about ${cfm}.`,
  outOfReach: ({ target, cfm }) =>
    `No set of repairs should get to the target of ${target}; the tightest leaves about ${cfm}.`,
  plain: ({ low, high }) => `Prices run from ${low} to ${high}.`,
  point: ({ label, price, cfm }) => `${label}: ${price}, leaves ${cfm}`,
};

const ES: PriceFrontierWords = {
  title: "Lo que compra más dinero",
  note: "Cada punto es un grupo de reparaciones; ningún otro pierde menos por su precio. La barra va del décimo bueno al décimo malo de los resultados.",
  price: "Precio ($)",
  leakage: "Fuga restante a 25 Pa (cfm)",
  target: "meta",
  today: "hoy",
  caption: "Grupos de reparaciones, del más barato al más caro",
  columns: ["Grupo de reparaciones", "Precio ($)", "Fuga restante a 25 Pa (cfm)", "Meta"],
  meets: "alcanzada",
  misses: "no alcanzada",
  noTarget: "sin meta",
  none: "Todavía no hay reparaciones.",
  cheapest: ({ label, price, target, cfm }) =>
    `Lo más barato que debería llegar a la meta de ${target} es “${label}”: ${price}, y quedan unos ${cfm}.`,
  outOfReach: ({ target, cfm }) => `Ningún grupo debería llegar a la meta de ${target}; el mejor deja unos ${cfm}.`,
  plain: ({ low, high }) => `Los precios van de ${low} a ${high}.`,
  point: ({ label, price, cfm }) => `${label}: ${price}, quedan ${cfm}`,
};

export const PRICE_FRONTIER_WORDS: Readonly<Record<Language, PriceFrontierWords>> = { en: EN, es: ES };
