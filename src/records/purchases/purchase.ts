import type { Day } from '../../core/time.ts';
import type { Money, Order } from '../orders/order.ts';

/** Several lines ordered together at one supplier, with what they share. */
export interface Purchase {
  readonly id: number;
  readonly buildId: number;
  readonly supplierId: number;
  readonly orderedOn: Day;
  readonly carriage: Money | null;
  /** The supplier's or the crew's own number for it. */
  readonly reference: string | null;
  /** The message that holds its invoice. */
  readonly link: string | null;
}

/** A purchase with its lines. */
export interface PurchaseLines {
  readonly purchase: Purchase;
  readonly lines: readonly Order[];
}
