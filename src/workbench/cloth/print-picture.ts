/** Prints an SVG by itself, as large as the paper takes it: in a frame of its own, so that nothing else of the page is printed. */
export function printPicture(svg: string): void {
  const frame = document.createElement('iframe');
  frame.title = 'Picture to print';
  frame.setAttribute('aria-hidden', 'true');
  frame.className = 'print-frame';
  frame.srcdoc = `<!doctype html><style>@page{size:landscape;margin:10mm}body{margin:0}svg{width:100%;height:auto;max-height:95vh}</style>${svg}`;
  frame.addEventListener('load', () => {
    const inside = frame.contentWindow!;
    inside.addEventListener('afterprint', () => frame.remove());
    inside.focus();
    inside.print();
  });
  document.body.append(frame);
}
