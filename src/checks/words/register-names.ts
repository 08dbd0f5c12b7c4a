import { REGISTERS } from '../../hardware/registers.js';

/**
 * The symbols of all registers of the machine: those of the video chip and of the 6532 (S. Wright, programmer’s
 * guide to the console’s TIA and PIA, 3 December 1979, summary of registers), timers included.
 */
export const REGISTER_NAMES: ReadonlySet<string> = new Set([
  ...Object.keys(REGISTERS),
  ...words('VSYNC VBLANK WSYNC RSYNC NUSIZ0 NUSIZ1 COLUP0 COLUP1 COLUPF COLUBK CTRLPF REFP0 REFP1'),
  ...words('PF0 PF1 PF2 RESP0 RESP1 RESM0 RESM1 RESBL AUDC0 AUDC1 AUDF0 AUDF1 AUDV0 AUDV1 GRP0 GRP1'),
  ...words('ENAM0 ENAM1 ENABL HMP0 HMP1 HMM0 HMM1 HMBL VDELP0 VDELP1 VDELBL RESMP0 RESMP1 HMOVE HMCLR'),
  ...words('CXCLR CXM0P CXM1P CXP0FB CXP1FB CXM0FB CXM1FB CXBLPF CXPPMM'),
  ...words('INTIM TIMINT TIM1T TIM8T TIM64T T1024T'),
]);

function words(text: string): readonly string[] {
  return text.split(' ');
}
