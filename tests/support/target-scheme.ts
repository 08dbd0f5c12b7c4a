/**
 * The mode that the reading routine's cost is stated for: two joysticks, eight directions held, a tap and a hold on
 * each button, three panel switches.
 */
export const TARGET_SCHEME = `# Two kites

Two kites, one wind.

## Game

| Item | Value |
| --- | --- |
| Short name | TK |
| TV standards | NTSC, PAL |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Pair | 2 | joystick | joystick |

## Actions

| Action | Say it as |
| --- | --- |
| Steer | Lean the kite |
| Tug | Tug the line |
| Reel | Reel the line in |
| Land | Bring both kites down |
| Next sky | Fly under another sky |
| Gust | A gust for the left kite |

## Mode: Sky

| Who | Action | Control | Gesture |
| --- | --- | --- | --- |
| each | Steer | stick | held |
| each | Tug | button | tap under 0.3 s |
| each | Reel | button | hold 0.3 s |
| anyone | Land | RESET | press |
| anyone | Next sky | SELECT | press |
| anyone | Gust | left difficulty | flip |
`;

/** At most: cycles a read with JSR and RTS, and bytes of RAM. */
export const TARGET_LIMITS = { cycles: 260, ramBytes: 12 } as const;
