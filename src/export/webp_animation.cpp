#include "export/webp_animation.h"

#include <cmath>
#include <new>

#include <webp/encode.h>
#include <webp/mux.h>

namespace laywright {

namespace {

using EncoderPtr = std::unique_ptr<WebPAnimEncoder, decltype(&WebPAnimEncoderDelete)>;
using Picture = std::unique_ptr<WebPPicture, decltype(&WebPPictureFree)>;

EncoderPtr open(const WebpSettings& settings) {
  WebPAnimEncoderOptions options;
  if (WebPAnimEncoderOptionsInit(&options) == 0) throw std::bad_alloc();
  options.anim_params.loop_count = 0;
  EncoderPtr encoder(WebPAnimEncoderNew(settings.width, settings.height, &options), &WebPAnimEncoderDelete);
  if (!encoder) throw std::bad_alloc();
  return encoder;
}

WebPConfig config_for(const WebpSettings& settings) {
  WebPConfig config;
  if (WebPConfigInit(&config) == 0) throw std::bad_alloc();
  config.quality = static_cast<float>(settings.quality);
  config.lossless = settings.quality >= 100.0 ? 1 : 0;
  config.method = 3;  // of 0 to 6: twice as quick as the best, files a few percent larger
  // Thin lines of strong colour lose less that way.
  config.use_sharp_yuv = 1;
  return config;
}

}  // namespace

struct WebpAnimation::Encoder {
  WebpSettings settings;
  EncoderPtr encoder;
  WebPConfig config;
  std::size_t frames = 0;

  explicit Encoder(const WebpSettings& its) : settings(its), encoder(open(its)), config(config_for(its)) {}

  [[nodiscard]] int time_ms(std::size_t frame) const {
    return static_cast<int>(std::lround(1000.0 * static_cast<double>(frame) / settings.frames_per_second));
  }
};

WebpAnimation::WebpAnimation(const WebpSettings& settings) : encoder_(std::make_unique<Encoder>(settings)) {}
WebpAnimation::WebpAnimation(WebpAnimation&&) noexcept = default;
WebpAnimation& WebpAnimation::operator=(WebpAnimation&&) noexcept = default;
WebpAnimation::~WebpAnimation() = default;

bool WebpAnimation::add(std::span<const std::uint8_t> pixels) {
  WebPPicture frame;
  if (WebPPictureInit(&frame) == 0) return false;
  const Picture owned(&frame, &WebPPictureFree);
  frame.use_argb = 1;
  frame.width = encoder_->settings.width;
  frame.height = encoder_->settings.height;
  if (WebPPictureImportRGBA(&frame, pixels.data(), 4 * frame.width) == 0) return false;
  const int time = encoder_->time_ms(encoder_->frames++);
  return WebPAnimEncoderAdd(encoder_->encoder.get(), &frame, time, &encoder_->config) != 0;
}

std::string WebpAnimation::finish() {
  WebPAnimEncoder* const encoder = encoder_->encoder.get();
  if (WebPAnimEncoderAdd(encoder, nullptr, encoder_->time_ms(encoder_->frames), nullptr) == 0) return {};
  WebPData data;
  WebPDataInit(&data);
  std::string bytes;
  if (WebPAnimEncoderAssemble(encoder, &data) != 0)
    bytes.assign(reinterpret_cast<const char*>(data.bytes), data.size);
  WebPDataClear(&data);
  return bytes;
}

}  // namespace laywright
