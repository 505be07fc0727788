import type { ShownPicture, Size } from '../../app/piece/picture-view.ts';
import type { Camera } from './use-camera.ts';

/** The picture itself, turned and cropped as the view says, at the camera's place. The window draws it; nothing here touches its points. */
export function PictureLayer({ url, alt, picture, shown, camera }: { readonly url: string; readonly alt: string; readonly picture: Size; readonly shown: ShownPicture; readonly camera: Camera }) {
  const { zoom, x, y } = camera;
  return (
    <div className="picture-crop" style={{ width: shown.size.width * zoom, height: shown.size.height * zoom, transform: `translate(${x}px, ${y}px)` }}>
      <img src={url} alt={alt} draggable={false} decoding="async" style={{ width: picture.width, height: picture.height, transform: `scale(${zoom}) matrix(${shown.matrix.join(',')})` }} />
    </div>
  );
}
