/**
 * The packer's main file can't be imported by name in Node (a script in a package of modules); its module file
 * can, and this is the part of it that is used.
 */
declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  interface PackedRectangle<Data> {
    readonly x: number;
    readonly y: number;
    /** Turned by 90°: width and height have changed places. */
    readonly rot: boolean;
    readonly data: Data;
  }

  export class MaxRectsPacker<Data> {
    constructor(
      width: number,
      height: number,
      padding: number,
      options: {
        readonly smart: boolean;
        readonly pot: boolean;
        readonly square: boolean;
        readonly allowRotation: boolean;
        readonly border: number;
      },
    );
    add(width: number, height: number, data: Data): unknown;
    readonly bins: readonly { readonly rects: readonly PackedRectangle<Data>[] }[];
  }
}
