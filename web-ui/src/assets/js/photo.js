/** Makes a photo of a phone small enough to keep: at most 1600 px, JPEG, below the service's limit. */

const LONGEST_PX = 1600;
const LIMIT_OCTETS = 1_000_000;
const QUALITIES = [0.82, 0.7, 0.55, 0.4];

/** {media_type, base64} of a file; an Error in words if it is no picture the browser can read. */
export async function photoOf(file) {
  let bitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch {
    throw new Error(`${file.name} is no picture this browser can read; take a JPEG or PNG`);
  }
  const shrink = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * shrink));
  canvas.height = Math.max(1, Math.round(bitmap.height * shrink));
  canvas.getContext("2d").drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  for (const quality of QUALITIES) {
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", quality));
    if (blob && blob.size <= LIMIT_OCTETS) {
      return { media_type: "image/jpeg", base64: await base64(blob) };
    }
  }
  throw new Error(`${file.name} stays above 1 MB; take a picture with less in it`);
}

function base64(blob) {
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result.slice(reader.result.indexOf(",") + 1));
    reader.onerror = () => fail(new Error("the picture could not be read; try again"));
    reader.readAsDataURL(blob);
  });
}
