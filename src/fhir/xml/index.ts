export { fromXml } from './from-xml.ts';
export type { XmlLimits } from './reader.ts';
export { type ToXmlOptions, toXml } from './to-xml.ts';
