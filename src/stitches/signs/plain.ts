import { dot, type Signs } from '../sign'

const blank: Signs = { cyc: [], jis: [] }
const bump: Signs = { cyc: [dot(0.5, 0.5, 0.14)], jis: [dot(0.5, 0.5, 0.14)] }

export const plainSigns = {
  k: blank,
  ew: bump,
  uw: bump,
  fk: bump,
  tk: bump,
  p: bump,
  ptbl: bump,
  sl: bump,
  slf: bump,
  tuck: bump,
  yo: bump,
  m1l: bump,
  m1r: bump,
  kfb: bump,
  k2tog: bump,
  ssk: bump,
  p2tog: bump,
  ssp: bump,
  cdd: bump,
  k3tog: bump,
  sk2p: bump,
  mb: bump,
  none: bump,
} satisfies Record<string, Signs>
