/**
 * Commands with parts that need no crew's record: sums, tables, help. They go wherever a person goes. Any other command stays
 * in its crew's server, so that a new one never stands where it could only refuse. A test tries every command outside a crew
 * and holds this list to what it finds.
 */
const FOR_ANYBODY: ReadonlySet<string> = new Set([
  'air',
  'ask',
  'battery',
  'boost',
  'brake',
  'cable',
  'check',
  'coil',
  'convert',
  'coolant',
  'engine',
  'fitting',
  'help',
  'injector',
  'lambda',
  'oil',
  'pump',
  'sensor',
  'thread',
  'torque',
]);

/** Whether a command is of use where there is no crew: in a private message, or through the app on one's own account. */
export const worksAnywhere = (command: string): boolean => FOR_ANYBODY.has(command);
