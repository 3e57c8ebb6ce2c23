export { type FromXmlOptions, fromXml } from './from-xml.ts';
export { type ToXmlOptions, toXml } from './to-xml.ts';
