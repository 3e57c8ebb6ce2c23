/**
 * Whether a text is a language tag: of the form that BCP 47 gives it, with a language and a region that
 * exist where they have two letters. Upper and lower case make no difference.
 * @see https://www.rfc-editor.org/rfc/rfc5646#section-2.1
 */
export function isLanguageTag(tag: string): boolean {
  const found = form.exec(tag.toLowerCase());
  if (found === null) return irregular.has(tag.toLowerCase());
  const { language, region, own } = found.groups ?? {};
  if (own !== undefined) return true;
  if (language?.length === 2 && !languages.has(language)) return false;
  return region === undefined || region.length !== 2 || regions.has(region);
}

/** Language with extensions, script, region, variants, extensions, private use; or private use alone. */
const form =
  /^(?:(?<language>[a-z]{2,3}(?:-[a-z]{3}){0,3})(?:-[a-z]{4})?(?:-(?<region>[a-z]{2}|\d{3}))?(?:-(?:[a-z0-9]{5,8}|\d[a-z0-9]{3}))*(?:-[a-wyz0-9](?:-[a-z0-9]{2,8})+)*(?:-x(?:-[a-z0-9]{1,8})+)?|(?<own>x(?:-[a-z0-9]{1,8})+))$/;

/** Tags from before the form was fixed; RFC 5646 keeps them. */
const irregular: ReadonlySet<string> = words(
  'en-gb-oed i-ami i-bnn i-default i-enochian i-hak i-klingon i-lux i-mingo i-navajo i-pwn i-tao ' +
    'i-tay i-tsu sgn-be-fr sgn-be-nl sgn-ch-de',
);

function words(text: string): ReadonlySet<string> {
  return new Set(text.split(' '));
}

/** Subtags of two letters; those of three are too many to hold, and are taken as they are. */
const languages: ReadonlySet<string> = words(
  'aa ab ae af ak am an ar as av ay az ba be bg bh bi bm bn bo br bs ca ce ch co cr cs cu cv cy ' +
    'da de dv dz ee el en eo es et eu fa ff fi fj fo fr fy ga gd gl gn gu gv ha he hi ho hr ht hu ' +
    'hy hz ia id ie ig ii ik in io is it iu iw ja ji jv jw ka kg ki kj kk kl km kn ko kr ks ku kv ' +
    'kw ky la lb lg li ln lo lt lu lv mg mh mi mk ml mn mo mr ms mt my na nb nd ne ng nl nn no nr ' +
    'nv ny oc oj om or os pa pi pl ps pt qu rm rn ro ru rw sa sc sd se sg sh si sk sl sm sn so sq ' +
    'sr ss st su sv sw ta te tg th ti tk tl tn to tr ts tt tw ty ug uk ur uz ve vi vo wa wo xh yi ' +
    'yo za zh zu',
);

const regions: ReadonlySet<string> = words(
  'ac ad ae af ag ai al am an ao aq ar as at au aw ax az ba bb bd be bf bg bh bi bj bl bm bn bo ' +
    'bq br bs bt bu bv bw by bz ca cc cd cf cg ch ci ck cl cm cn co cp cq cr cs cu cv cw cx cy cz ' +
    'dd de dg dj dk dm do dy dz ea ec ee eg eh er es et eu fi fj fk fm fo fr fx ga gb gd ge gf gg ' +
    'gh gi gl gm gn gp gq gr gs gt gu gw gy hk hm hn hr ht hu hv ic id ie il im in io iq ir is it ' +
    'je jm jo jp ke kg kh ki km kn kp kr kw ky kz la lb lc li lk lr ls lt lu lv ly ma mc md me mf ' +
    'mg mh mk ml mm mn mo mp mq mr ms mt mu mv mw mx my mz na nc ne nf ng nh ni nl no np nr nu nz ' +
    'om pa pe pf pg ph pk pl pm pn pr ps pt pw py qa re rh ro rs ru rw sa sb sc sd se sg sh si sj ' +
    'sk sl sm sn so sr ss st su sv sx sy sz ta tc td tf tg th tj tk tl tm tn to tp tr tt tv tw tz ' +
    'ua ug uk um us uy uz va vc vd ve vg vi vn vu wf ws xk yd ye yt yu za zm zr zw',
);
