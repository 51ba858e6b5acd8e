/** What people come for, and the commands that serve it, the most used first. */
export interface Topic {
  readonly key: string;
  readonly name: string;
  readonly commands: readonly string[];
}

export const TOPICS: readonly Topic[] = [
  { key: 'parts', name: 'Parts and suppliers', commands: ['order', 'part', 'supplier', 'cost', 'import'] },
  {
    key: 'work',
    name: 'Work and stages',
    commands: ['now', 'job', 'when', 'ready', 'stage', 'temporary', 'fluid'],
  },
  {
    key: 'running',
    name: 'Readings and running',
    commands: ['reading', 'check', 'fault', 'log', 'runin', 'lambda'],
  },
  {
    key: 'fit',
    name: 'Threads, fittings, fasteners',
    commands: ['thread', 'fitting', 'torque'],
  },
  {
    key: 'sums',
    name: 'Sums',
    commands: [
      'ask',
      'convert',
      'injector',
      'pump',
      'air',
      'boost',
      'engine',
      'oil',
      'coolant',
      'brake',
      'cable',
      'battery',
      'coil',
      'sensor',
    ],
  },
  { key: 'crew', name: 'Crew and record', commands: ['build', 'team', 'undo', 'export', 'help'] },
];
