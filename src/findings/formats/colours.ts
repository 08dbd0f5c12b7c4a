import picocolors from 'picocolors';

export type Colours = Pick<
  ReturnType<typeof picocolors.createColors>,
  'bold' | 'dim' | 'red' | 'yellow' | 'cyan' | 'green'
>;

export function createColours(enabled: boolean): Colours {
  return picocolors.createColors(enabled);
}
