export interface PlainPdfParts {
  /** Content stream of the page. */
  readonly content?: string;
  readonly mediaBox?: string;
  /** More entries of the page dictionary. */
  readonly page?: string;
  /** Further objects from number 10 on, as written. */
  readonly objects?: readonly string[];
  readonly resources?: string;
}

const CONTENT = `q 0.5 w 1 0 0 RG [6 3] 0 d
/OC /big BDC 100 100 m 400 100 l 420 300 400 500 380 600 c 100 600 l s EMC
/OC /small BDC 0 0 1 RG [] 0 d 100 100 m 380 100 l 400 300 380 500 360 600 c 100 600 l s EMC
Q /form Do BT /F1 12 Tf 150 300 Td (Skirt front) Tj ET`;

/** A PDF without compression, so that what is in it can be read and bent; layers, a form, words. Written by hand after ISO 32000-1, 7.5 (memory). */
export function plainPdf(parts: PlainPdfParts = {}): Uint8Array {
  const content = parts.content ?? CONTENT;
  const form = '0.3 w 0 0 m 72 0 l 72 72 l 0 72 l h S';
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R /OCProperties << /OCGs [6 0 R 7 0 R] /D << /Order [6 0 R 7 0 R] /OFF [7 0 R] >> >> >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox ${parts.mediaBox ?? '[0 0 595.276 841.89]'} /Contents 4 0 R /Resources ${parts.resources ?? '<< /Font << /F1 5 0 R >> /Properties << /big 6 0 R /small 7 0 R >> /XObject << /form 8 0 R >> >>'} ${parts.page ?? ''} >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
    '<< /Type /OCG /Name (Size 40) >>',
    '<< /Type /OCG /Name (Size 36) >>',
    `<< /Type /XObject /Subtype /Form /BBox [0 0 72 72] /Matrix [1 0 0 1 400 700] /Length ${form.length} >>\nstream\n${form}\nendstream`,
    '<< >>',
    ...(parts.objects ?? []),
  ];
  let text = '%PDF-1.5\n';
  const at: number[] = [];
  objects.forEach((object, i) => {
    at.push(text.length);
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
  });
  const xref = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${at.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('')}`;
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${xref}\n%%EOF\n`;
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
