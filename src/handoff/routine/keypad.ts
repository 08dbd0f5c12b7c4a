import type { Contact } from '../../gestures/contacts.js';
import { type ScanStep, scanSteps } from '../../hardware/port-setup.js';
import { wireOf } from '../../hardware/wiring.js';
import { type Bank, inptRegister, isKey } from './banks.js';
import { implied, memory, remark, value } from './code.js';
import { type Context, nowCell, register } from './context.js';

const ALL = 0xff;

/** The rows a seats row's keys need, in order: one step drives each. */
export function stepsOf(keys: readonly Contact[]): readonly ScanStep[] {
  return scanSteps(keys.map(wireOf));
}

/** Drives a row of each keypad: its pins become outputs that are low. */
export function emitDrive(context: Context, { row, swacnt, swcha }: ScanStep): void {
  const { code } = context;
  remark(code, `drive row ${row}`);
  value(code, 'lda', swcha);
  memory(code, 'sta', register(context, 'SWCHA'));
  value(code, 'lda', swacnt, 'its pins are outputs');
  memory(code, 'sta', register(context, 'SWACNT'));
}

/** Reads the columns of the row that is driven; each key is shifted into its byte, 0 pressed. */
export function emitColumns(context: Context, row: number): void {
  const { code, plan } = context;
  remark(code, `read the columns of row ${row}`);
  for (const bank of keyBanksOf(plan.map.banks)) {
    for (const { contact, wire } of bank.lines) {
      if (wire.kind !== 'matrix' || wire.row !== row) continue;
      memory(code, 'lda', register(context, inptRegister(wire)), contact.id);
      implied(code, 'asl');
      memory(code, 'rol', nowCell(context, bank.id));
    }
  }
}

/** After the last row: the port is let go, keys are turned to 1 pressed. */
export function emitScanEnd(context: Context): void {
  const { code, plan } = context;
  value(code, 'lda', 0);
  memory(code, 'sta', register(context, 'SWACNT'), 'port A: all input again');
  for (const bank of keyBanksOf(plan.map.banks)) {
    memory(code, 'lda', nowCell(context, bank.id));
    value(code, 'eor', ALL, '0 is pressed: turned into 1');
    memory(code, 'sta', nowCell(context, bank.id));
  }
}

const keyBanksOf = (banks: readonly Bank[]) =>
  banks.filter(({ lines }) => lines.some(line => isKey(line.contact)));
