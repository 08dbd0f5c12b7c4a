/** The published form of `controls.json`: JSON Schema, draft 2020-12. */
export const CONTROLS_SCHEMA = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: 'urn:leverleaf:controls:1',
  title: 'Compiled input scheme',
  ...record({
    format: { const: 'leverleaf-controls' },
    version: { const: 1 },
    title: text(),
    shortName: { type: 'string', pattern: '^[A-Za-z][A-Za-z0-9]{0,7}$' },
    gameVersion: text(),
    readEveryFrames: { type: 'integer', minimum: 1 },
    buttonLatch: { enum: ['off', 'cleared each read', 'cleared on use'] },
    standards: list(
      record({ name: { enum: ['NTSC', 'PAL', 'SECAM'] }, framesPerSecond: { type: 'number' } }),
    ),
    consoles: list(record({ name: text(), number: count(), switches: { $ref: '#/$defs/switches' } })),
    registers: list(record({ symbol: text(), address: count(0xffff), access: text(), holds: text() })),
    seats: list(
      record({
        name: text(),
        number: count(),
        left: nullable(text()),
        right: nullable(text()),
        players: list(record({ name: text(), port: { enum: ['left', 'right'] }, controller: text() })),
      }),
    ),
    controls: list({ $ref: '#/$defs/control' }),
    settings: list(
      record({ name: text(), values: list(text()), startsAs: text(), setBy: { $ref: '#/$defs/setBy' } }),
    ),
    actions: list(
      record({
        name: text(),
        number: count(),
        words: text(),
        short: text(),
        need: { enum: ['must', 'nice'] },
      }),
    ),
    startMode: text(),
    modes: list({ $ref: '#/$defs/mode' }),
    variations: list(
      record({
        name: text(),
        seats: list(text()),
        values: list(record({ setting: text(), value: text() })),
        words: text(),
      }),
    ),
    ram: record({ bytes: count(0x80), shared: list({ $ref: '#/$defs/cell' }) }),
    symbols: list(record({ name: symbol(), value: count(0xffff) })),
  }),
  $defs: {
    switches: {
      type: 'object',
      additionalProperties: record(
        { kind: { enum: ['front', 'rear', 'fixed', 'absent'] }, position: text() },
        ['position'],
      ),
    },
    bit: record({ register: text(), bit: count(7), mask: count(0xff) }),
    control: record(
      {
        name: text(),
        kind: { enum: ['line', 'two-position', 'matrix', 'pot', 'gray'] },
        mask: count(0xff),
        bits: list({ $ref: '#/$defs/bit' }),
        engagedReads: count(1),
        positions: list(record({ name: text(), reads: count(1) })),
        row: count(4),
        column: count(3),
        drive: { $ref: '#/$defs/bit' },
      },
      ['engagedReads', 'positions', 'row', 'column', 'drive'],
    ),
    setBy: {
      oneOf: [
        record({ kind: { const: 'game' } }),
        record({
          kind: { const: 'switch' },
          switch: text(),
          positions: list(record({ position: text(), value: text() })),
        }),
      ],
    },
    cell: record({ symbol: symbol(), offset: count(0xff), kind: text(), holds: text() }),
    output: record({
      symbol: symbol(),
      action: text(),
      player: text(),
      direction: nullable(text()),
      byte: count(),
      bit: count(7),
      mask: count(0xff),
    }),
    mode: record({
      name: text(),
      number: count(),
      kind: { enum: ['menu', 'play', 'pause'] },
      seats: list(text()),
      outputs: list({ $ref: '#/$defs/output' }),
      gameRows: list(record({ action: text(), when: list(text()), effects: list(text()) })),
      units: list({ $ref: '#/$defs/unit' }),
    }),
    unit: record({
      seats: text(),
      consoles: list(text()),
      swacnt: count(0xff),
      vblank: count(0xff),
      keypadRows: list(count(4)),
      routine: record({
        read: symbol(),
        enter: symbol(),
        start: nullable(symbol()),
        scan: list(symbol()),
        worstCycles: count(),
        worstCyclesOfRead: count(),
        worstCyclesOfScan: list(count()),
        moreCyclesElsewhere: count(),
        romBytes: count(),
        ramBytes: count(),
      }),
      ram: list({ $ref: '#/$defs/cell' }),
      bindings: list({ $ref: '#/$defs/binding' }),
    }),
    gesture: record(
      {
        kind: text(),
        position: text(),
        time: text(),
        reads: list(record({ standard: text(), count: { type: 'integer', minimum: 1 } })),
      },
      ['position', 'time', 'reads'],
    ),
    binding: record({
      order: count(),
      alternative: count(),
      player: text(),
      action: text(),
      direction: nullable(text()),
      controls: list(text()),
      gesture: { $ref: '#/$defs/gesture' },
      when: list(text()),
      effects: list(text()),
      insteadOf: list(text()),
      alongWith: list(text()),
      isFallback: { type: 'boolean' },
      output: nullable(symbol()),
    }),
  },
};

type Form = Readonly<Record<string, unknown>>;

/** An object with exactly these members; those named in `optional` may be left out. */
function record(properties: Readonly<Record<string, Form>>, optional: readonly string[] = []): Form {
  const required = Object.keys(properties).filter(name => !optional.includes(name));
  return { type: 'object', properties, required, additionalProperties: false };
}

function list(items: Form): Form {
  return { type: 'array', items };
}

function text(): Form {
  return { type: 'string' };
}

function symbol(): Form {
  return { type: 'string', pattern: '^[A-Z_][A-Z0-9_]*$' };
}

function count(most?: number): Form {
  return { type: 'integer', minimum: 0, ...(most === undefined ? {} : { maximum: most }) };
}

function nullable(form: Form): Form {
  return { anyOf: [form, { type: 'null' }] };
}
