import type { Database } from 'better-sqlite3';
import { type BuildStore, openBuildStore } from './builds/build-store.ts';
import { openRateStore, type RateStore } from './costs/rate-store.ts';
import { type FluidStore, openFluidStore } from './fluids/fluid-store.ts';
import { type FuelTableStore, openFuelTableStore } from './fuelling/fuel-table-store.ts';
import { type LogHeaderStore, openLogHeaderStore } from './fuelling/log-header-store.ts';
import { type JobStore, openJobStore } from './jobs/job-store.ts';
import { openWeekStore, type WeekStore } from './jobs/week-store.ts';
import { type MeasureStore, openMeasureStore } from './measures/measure-store.ts';
import { type OrderStore, openOrderStore } from './orders/order-store.ts';
import { openPartStore, type PartStore } from './parts/part-store.ts';
import { openPortStore, type PortStore } from './ports/port-store.ts';
import { openPurchaseStore, type PurchaseStore } from './purchases/purchase-store.ts';
import { openReadingRuleStore, type ReadingRuleStore } from './readings/reading-rule-store.ts';
import { openReadingStore, type ReadingStore } from './readings/reading-store.ts';
import { openRunInStore, type RunInStore } from './running-in/run-in-store.ts';
import { openStageStore, type StageStore } from './stages/stage-store.ts';
import { openSupplierStore, type SupplierStore } from './suppliers/supplier-store.ts';
import { openSettingsStore, type SettingsStore } from './team/settings-store.ts';
import { openWalkStore, type WalkStore } from './walks/walk-store.ts';

/** One team's record. It sits on that team's own file, so it cannot see anybody else's. */
export interface TeamRecord {
  readonly settings: SettingsStore;
  readonly builds: BuildStore;
  readonly suppliers: SupplierStore;
  readonly orders: OrderStore;
  readonly purchases: PurchaseStore;
  readonly rates: RateStore;
  readonly parts: PartStore;
  readonly ports: PortStore;
  readonly readings: ReadingStore;
  /** The crew's own kinds of reading, and its limits. */
  readonly readingRules: ReadingRuleStore;
  readonly runIn: RunInStore;
  readonly jobs: JobStore;
  /** When the crew works. */
  readonly weeks: WeekStore;
  readonly measures: MeasureStore;
  readonly stages: StageStore;
  readonly fluids: FluidStore;
  /** Searches for a fault. */
  readonly walks: WalkStore;
  /** What the crew has said of its logger's columns. */
  readonly logHeaders: LogHeaderStore;
  readonly fuelTables: FuelTableStore;
}

/** Tables that keep the machinery going rather than the crew's memory; changes to them are not logged. */
export const BOOKKEEPING = ['change', 'change_row', 'morning', 'outbox', 'draft', 'proposal'] as const;

/** Opened on the way by the first record that names them; they stay when that one is undone and others rest on them. */
export const STANDING = ['build', 'supplier', 'part', 'part_name'] as const;

export function openTeamRecord(db: Database): TeamRecord {
  return {
    settings: openSettingsStore(db),
    builds: openBuildStore(db),
    suppliers: openSupplierStore(db),
    orders: openOrderStore(db),
    purchases: openPurchaseStore(db),
    rates: openRateStore(db),
    parts: openPartStore(db),
    ports: openPortStore(db),
    readings: openReadingStore(db),
    readingRules: openReadingRuleStore(db),
    runIn: openRunInStore(db),
    jobs: openJobStore(db),
    weeks: openWeekStore(db),
    measures: openMeasureStore(db),
    stages: openStageStore(db),
    fluids: openFluidStore(db),
    logHeaders: openLogHeaderStore(db),
    fuelTables: openFuelTableStore(db),
    walks: openWalkStore(db),
  };
}
