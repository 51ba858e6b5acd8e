import { describe, expect, it } from 'vitest';
import { findPort, suggestPorts } from '../../../../src/records/ports/find-port.ts';
import { notePort, removePort } from '../../../../src/records/ports/note-port.ts';
import { openTeamRecord } from '../../../../src/records/team-record.ts';
import { migrations } from '../../../../src/sqlite/migrations/list.ts';
import { openDatabase } from '../../../../src/sqlite/open.ts';

function openRecord() {
  const record = openTeamRecord(openDatabase(':memory:', { migrations, nowMs: 0 }));
  const build = record.builds.open('600', 'hill-climb');
  const other = record.builds.open('601', 'rally');
  const note = (name: string, endId: string, more: { note?: string; link?: string; buildId?: number } = {}) =>
    notePort(record, {
      buildId: more.buildId ?? build.id,
      name,
      endId,
      typed: endId,
      note: more.note,
      link: more.link,
      by: 'Ada',
      on: '2026-11-23',
    });
  return { record, build, other, note };
}

describe('the ports of a build', () => {
  it('are noted once each, and listed by name', () => {
    const { record, build, note } = openRecord();
    note('oil feed', 'BANJO M10x1');
    note('Catch-tank return', 'ORB -8 female');
    expect(record.ports.ofBuild(build.id).map(({ name }) => name)).toEqual(['Catch-tank return', 'oil feed']);
  });

  it('are corrected under the same name in any case, keeping what is not said again', () => {
    const { record, build, note } = openRecord();
    note('oil feed', 'BANJO M10x1', { note: 'read by Bram', link: 'https://example.org/1' });
    const { said, value } = note('OIL feed', 'ORB -4 female');
    expect(said).toBe('port "oil feed" corrected: ORB -4 female, was BANJO M10x1');
    expect(value.before?.endId).toBe('BANJO M10x1');
    expect(record.ports.ofBuild(build.id)).toMatchObject([
      { endId: 'ORB -4 female', note: 'read by Bram', link: 'https://example.org/1' },
    ]);
  });

  it('are found by part of their name, asked about when several fit, and named when none does', () => {
    const { record, build, other, note } = openRecord();
    note('oil feed', 'BANJO M10x1');
    note('oil return', 'JIC -10 male');
    expect(findPort(record, build.id, 'feed', 'port').name).toBe('oil feed');
    expect(() => findPort(record, build.id, 'oil', 'port')).toThrow(/Several ports fit/);
    expect(() => findPort(record, build.id, 'water', 'port')).toThrow(/Noted: oil feed, oil return/);
    expect(() => findPort(record, other.id, 'oil feed', 'port')).toThrow(/No port of this build is noted/);
    expect(() => findPort(record, undefined, 'oil feed', 'port')).toThrow(/No port of this build is noted/);
  });

  it('are found by number only in their own build', () => {
    const { record, build, other, note } = openRecord();
    const { id } = note('oil feed', 'BANJO M10x1').value.port;
    note('water', 'G 1/4 female', { buildId: other.id });
    expect(findPort(record, build.id, `#${id}`, 'port').name).toBe('oil feed');
    expect(() => findPort(record, other.id, `#${id}`, 'port')).toThrow(/No port here is called/);
  });

  it('are offered while a name is typed, by name or end', () => {
    const { record, build, note } = openRecord();
    note('oil feed', 'BANJO M10x1');
    note('oil return', 'JIC -10 male');
    expect(suggestPorts(record, build.id, 'banjo').map(({ value }) => value)).toEqual(['oil feed']);
  });

  it('are gone when removed', () => {
    const { record, build, note } = openRecord();
    const { port } = note('oil feed', 'BANJO M10x1').value;
    expect(removePort(record, port).said).toContain('removed');
    expect(record.ports.ofBuild(build.id)).toEqual([]);
  });
});
