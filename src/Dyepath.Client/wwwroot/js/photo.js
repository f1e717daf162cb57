// A chosen picture, upright, scaled down and written anew as a JPEG: nothing that the camera noted beside it comes along.
export async function take(id, mostPixels, mostBytes) {
  const input = document.getElementById(id);
  const file = input?.files?.[0];
  if (!file) return null;
  input.value = '';
  let picture;
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return '';
  }
  const canvas = document.createElement('canvas');
  let blob = null;
  for (let side = mostPixels; side >= 160 && !blob; side = Math.floor(side * 0.8)) {
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const context = canvas.getContext('2d');
    context.imageSmoothingQuality = 'high';
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(picture, 0, 0, canvas.width, canvas.height);
    for (const quality of [0.86, 0.78, 0.7]) {
      blob = await new Promise(done => canvas.toBlob(done, 'image/jpeg', quality));
      if (blob && blob.size <= mostBytes) break;
      blob = null;
    }
  }
  picture.close();
  return blob ? base64(blob) : '';
}

// A drawing as pixels; null where the browser cannot.
export async function png(svg, width, height) {
  const link = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const picture = new Image();
    picture.src = link;
    await picture.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    canvas.getContext('2d').drawImage(picture, 0, 0, width, height);
    const blob = await new Promise(done => canvas.toBlob(done, 'image/png'));
    return blob && await base64(blob);
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(link);
  }
}

async function base64(blob) {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}
