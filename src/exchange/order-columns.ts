/** What a column of an order list can hold. */
export type OrderColumn =
  | 'what'
  | 'reference'
  | 'supplier'
  | 'quantity'
  | 'price'
  | 'each'
  | 'currency'
  | 'due'
  | 'ordered';

/** Headings as people write them, folded to lower-case letters; the first that fits a heading wins. */
const HEADINGS: Readonly<Record<OrderColumn, readonly string[]>> = {
  reference: [
    'part no',
    'part number',
    'sku',
    'reference',
    'ref',
    'code',
    'artikelnummer',
    'teilenummer',
    'référence',
  ],
  each: [
    'each',
    'price each',
    'unit price',
    'unit cost',
    'per piece',
    'einzelpreis',
    'stückpreis',
    'prix unitaire',
    'precio unitario',
  ],
  what: [
    'what',
    'part',
    'item',
    'description',
    'article',
    'name',
    'line',
    'artikel',
    'bezeichnung',
    'beschreibung',
    'teil',
    'pièce',
    'désignation',
    'pieza',
    'descripción',
  ],
  supplier: [
    'supplier',
    'from',
    'seller',
    'shop',
    'vendor',
    'who',
    'lieferant',
    'händler',
    'fournisseur',
    'proveedor',
  ],
  quantity: [
    'quantity',
    'qty',
    'count',
    'how many',
    'pcs',
    'pieces',
    'menge',
    'anzahl',
    'stück',
    'stk',
    'quantité',
    'qté',
    'cantidad',
  ],
  price: [
    'price',
    'cost',
    'total',
    'amount',
    'sum',
    'line total',
    'preis',
    'gesamtpreis',
    'betrag',
    'summe',
    'prix',
    'montant',
    'precio',
    'importe',
  ],
  currency: ['currency', 'währung', 'devise', 'moneda'],
  due: [
    'due',
    'due date',
    'promised',
    'expected',
    'delivery',
    'delivery date',
    'arrives',
    'eta',
    'lieferdatum',
    'liefertermin',
    'termin',
    'zugesagt',
    'fällig',
    'livraison',
    'entrega',
  ],
  ordered: [
    'ordered',
    'ordered on',
    'order date',
    'date',
    'bestellt',
    'bestelldatum',
    'datum',
    'commandé',
    'pedido',
  ],
};

/** Which column of the list holds what, by its headings; those nobody knows are named. */
export interface ColumnPlan {
  readonly at: Readonly<Partial<Record<OrderColumn, number>>>;
  readonly unknown: readonly string[];
}

export function planColumns(headings: readonly string[]): ColumnPlan {
  const at: Partial<Record<OrderColumn, number>> = {};
  const unknown: string[] = [];
  headings.forEach((heading, index) => {
    const column = columnOf(heading);
    if (column === undefined || at[column] !== undefined) unknown.push(heading || `column ${index + 1}`);
    else at[column] = index;
  });
  return { at, unknown };
}

function columnOf(heading: string): OrderColumn | undefined {
  const folded = fold(heading);
  if (folded === '') return undefined;
  const known = Object.entries(HEADINGS).find(([, words]) => words.some((word) => fold(word) === folded));
  return known?.[0] as OrderColumn | undefined; // keys of HEADINGS are the columns
}

/** Lower case, without accents, marks or what stands in brackets: `Price (GBP)` is `price`. */
function fold(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[([].*?[)\]]/g, '')
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
}
