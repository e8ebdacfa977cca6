#include "app/desktop_picture.h"

#include <algorithm>
#include <utility>

#include "render/texture.h"
#include "scene/colouring.h"

namespace laywright {
namespace {

// Both ask for the same scene: all but the camera and the picture's size. The scale bar alone depends on these, and
// it is drawn from the view.
bool same_scene(const View& a, View b) {
  b.camera = a.camera;
  b.width_px = a.width_px;
  b.height_px = a.height_px;
  return a == b;
}

}  // namespace

DesktopPicture::DesktopPicture(Painter& painter, std::function<void()> wake)
    : painter_(painter), place_(painter.add()), wake_(std::move(wake)) {}

DesktopPicture::~DesktopPicture() { painter_.remove(place_); }

void DesktopPicture::show(const WoundPtr& wound, const View& view, double text_scale, bool explained) {
  wound_ = wound;
  view_ = view;
  if (!wound_) return;
  const bool other_kind = std::exchange(explained_, explained) != explained;
  if (!colours_are_ready()) {
    // Asked for when they are; what was seen stays until then.
    asked_view_.reset();
  } else if (other_kind || wound_ != asked_wound_ || !asked_view_ || !same_scene(*asked_view_, view_))
    ask_for_scene();
  take_fresh();
  if (!made_) return;
  const std::shared_ptr<const SceneSource> source(made_->wound, &made_->wound->source);
  painter_.want(place_, {source, made_->scene, made_->close_up, view_, text_scale});
}

// A payoff takes long, and does not change while the view does: a job of its own, given up for another.
bool DesktopPicture::colours_are_ready() {
  const std::optional<DrawOff> way = payoff_way(view_.colouring);
  const bool same = way && colours_ && colours_->wound == wound_ && colours_->way == *way;
  if (!same) {
    colours_job_.stop();
    colours_.reset();
  }
  if (!way) return true;
  if (!same) {
    colours_ = Colours{wound_, *way};
    colours_job_.ask(
        [wound = wound_, colouring = view_.colouring](Progress& progress) -> JobResult<bool> {
          if (!make_ready(wound->source, colouring, progress)) return Stopped{};
          return true;
        },
        wake_);
  }
  if (std::optional<JobResult<bool>> come = colours_job_.take()) {
    colours_->ready = come->done();
    colours_->failed = !come->done();
    if (!come->trouble().empty()) trouble_ = trouble_words(come->trouble());
  }
  return colours_->ready;
}

std::optional<double> DesktopPicture::colours_share() const {
  if (!colours_ || colours_->ready || colours_->failed) return std::nullopt;
  return colours_job_.share();
}

Colouring DesktopPicture::stop_colours() {
  colours_job_.stop();
  colours_.reset();
  // Of an older build, that was a payoff, too.
  if (!made_ || payoff_way(made_->view.colouring)) return Colouring::layer;
  return made_->view.colouring;
}

// Only the newest is made: a scrubber that is dragged asks faster than scenes are made.
void DesktopPicture::ask_for_scene() {
  asked_wound_ = wound_;
  asked_view_ = view_;
  makes_scene_ = true;
  close_up_failed_ = false;
  job_.ask(
      [wound = wound_, view = view_, explained = explained_](Progress&) {
        auto scene = std::make_shared<Scene>(make_scene(wound->source, view));
        scene->explained = explained;
        auto close_up =
            std::make_shared<CloseUp>(make_close_up(wound->source, *scene, view, close_up_beyond(scene->shell)));
        return Made{wound, view, std::move(scene), std::move(close_up)};
      },
      wake_, Older::finished);
}

void DesktopPicture::ask_for_close_up() {
  if (job_.busy() || close_up_failed_) return;
  makes_scene_ = false;
  job_.ask(
      [made = *made_, view = view_](Progress&) {
        Made nearer = made;
        nearer.close_up = std::make_shared<CloseUp>(
            make_close_up(made.wound->source, *made.scene, view, close_up_beyond(made.scene->shell)));
        return nearer;
      },
      wake_, Older::finished);
}

void DesktopPicture::take_fresh() {
  if (std::optional<JobResult<Made>> fresh = job_.take()) {
    if (fresh->done()) {
      made_ = std::move(fresh->value());
    } else {
      trouble_ = trouble_words(fresh->trouble());
      close_up_failed_ = true;
    }
  }
  if (made_ && !covers(*made_->close_up, *made_->scene, view_, close_up_beyond(made_->scene->shell)))
    ask_for_close_up();
}

void DesktopPicture::upload(const FinishedPicture& picture) {
  if (!own_ || own_width_ != picture.width || own_height_ != picture.height) {
    own_width_ = picture.width;
    own_height_ = picture.height;
    own_ = make_texture(picture.width, picture.height, four_bytes, picture.bytes.data());
    return;
  }
  glBindTexture(GL_TEXTURE_2D, own_.name());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glPixelStorei(GL_UNPACK_ROW_LENGTH, 0);
  glTexSubImage2D(GL_TEXTURE_2D, 0, 0, 0, picture.width, picture.height, four_bytes.format, four_bytes.type,
                  picture.bytes.data());
}

bool DesktopPicture::draw(const PixelBox& box) {
  const bool fresh = painter_.fresh(place_);
  FinishedPicture* const picture = painter_.newest(place_);
  if (picture == nullptr || !wound_) return false;
  if (fresh && !picture->texture) upload(*picture);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, source_.name());
  glFramebufferTexture2D(GL_READ_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D,
                         (picture->texture ? picture->texture : own_).name(), 0);
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, 0);
  // While the window changes its size, the last picture stands in the middle, the spool as high as it will be.
  const bool fits = picture->width == box.width && picture->height == box.height;
  const int width = fits ? box.width : picture->width * box.height / std::max(1, picture->height);
  const int left = box.x + (box.width - width) / 2;
  glScissor(box.x, box.y, box.width, box.height);
  glEnable(GL_SCISSOR_TEST);
  glBlitFramebuffer(0, 0, picture->width, picture->height, left, box.y, left + width, box.y + box.height,
                    GL_COLOR_BUFFER_BIT, fits ? GL_NEAREST : GL_LINEAR);
  glDisable(GL_SCISSOR_TEST);
  if (!picture->texture) return true;
  if (picture->read != nullptr) glDeleteSync(picture->read);
  picture->read = glFenceSync(GL_SYNC_GPU_COMMANDS_COMPLETE, 0);
  glFlush();
  return true;
}

bool DesktopPicture::stale() const { return job_.ready() || colours_job_.ready() || painter_.fresh(place_); }

bool DesktopPicture::finished() const { return made_ && !colours_share() && !painter_.unfinished(place_); }

std::string DesktopPicture::take_trouble() { return std::exchange(trouble_, {}); }

bool DesktopPicture::busy() const { return (makes_scene_ && job_.busy()) || colours_share().has_value(); }

std::shared_ptr<const Scene> DesktopPicture::scene() const { return made_ ? made_->scene : nullptr; }

}  // namespace laywright
