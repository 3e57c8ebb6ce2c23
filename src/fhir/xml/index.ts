export { type FromXmlOptions, fromXml, type XmlLimits } from './from-xml.ts';
export { type ToXmlOptions, toXml } from './to-xml.ts';
