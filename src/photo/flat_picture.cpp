#include "photo/flat_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <opencv2/core.hpp>
#include <opencv2/imgproc.hpp>

#include "base/quantity_text.h"
#include "base/units.h"
#include "photo/by_opencv.h"

namespace laywright {
namespace {

// Less than this between ground and spool, of the ground's brightness, is no silhouette.
constexpr double least_contrast = 0.25;
// So much of the picture's border must be ground: a shaft and what carries it may cross it.
constexpr double least_border_of_ground = 0.6;

// Both in one: what is darker than Otsu's threshold, 255 there.
cv::Mat darker(const cv::Mat& grey) {
  cv::Mat bytes, dark;
  grey.convertTo(bytes, CV_8U, 200.0);
  cv::threshold(bytes, dark, 0.0, 255.0, cv::THRESH_BINARY_INV | cv::THRESH_OTSU);
  return dark;
}

// Powers of the place that a parabola of brightness is made of, over the picture from -1 to 1.
cv::Vec<double, 6> powers(const cv::Mat& grey, int x, int y) {
  const double u = 2.0 * x / grey.cols - 1.0, v = 2.0 * y / grey.rows - 1.0;
  return {1.0, u, v, u * u, u * v, v * v};
}

// Divides by the ground's brightness, so that it is 1 all over.
void even_out(cv::Mat& grey, const cv::Mat& dark) {
  // Not up to the spool: its blurred edge is no ground.
  cv::Mat near_spool;
  cv::dilate(dark, near_spool, cv::Mat(), cv::Point(-1, -1), 6);
  cv::Matx<double, 6, 6> normal = cv::Matx<double, 6, 6>::zeros();
  cv::Vec<double, 6> right;
  const int step = std::max(1, std::min(grey.cols, grey.rows) / 250);
  for (int y = 0; y < grey.rows; y += step) {
    for (int x = 0; x < grey.cols; x += step) {
      if (near_spool.at<std::uint8_t>(y, x) != 0) continue;
      const cv::Vec<double, 6> at = powers(grey, x, y);
      normal += at * at.t();
      right += at * static_cast<double>(grey.at<float>(y, x));
    }
  }
  cv::Vec<double, 6> fitted;
  if (!cv::solve(normal, right, fitted, cv::DECOMP_SVD)) return;
  for (int y = 0; y < grey.rows; ++y) {
    for (int x = 0; x < grey.cols; ++x) {
      const double ground = fitted.dot(powers(grey, x, y));
      grey.at<float>(y, x) = static_cast<float>(grey.at<float>(y, x) / std::max(0.05, ground));
    }
  }
}

double border_of_ground(const cv::Mat& dark) {
  int ground = 0, all = 0;
  const auto look = [&](int x, int y) {
    ++all;
    ground += dark.at<std::uint8_t>(y, x) == 0;
  };
  for (int x = 0; x < dark.cols; ++x) look(x, 0), look(x, dark.rows - 1);
  for (int y = 0; y < dark.rows; ++y) look(0, y), look(dark.cols - 1, y);
  return static_cast<double>(ground) / all;
}

// 255 where the largest of the dark things is.
cv::Mat largest_thing(const cv::Mat& dark) {
  cv::Mat labels, sizes, middles;
  const int things = cv::connectedComponentsWithStats(dark, labels, sizes, middles, 8, CV_32S);
  int largest = 1;
  for (int each = 2; each < things; ++each) {
    if (sizes.at<int>(each, cv::CC_STAT_AREA) > sizes.at<int>(largest, cv::CC_STAT_AREA)) largest = each;
  }
  return labels == largest;
}

cv::Mat turned(const cv::Mat& grey, double turn_rad) {
  if (turn_rad == 0.0) return grey;
  const cv::Point2f middle(0.5F * static_cast<float>(grey.cols - 1), 0.5F * static_cast<float>(grey.rows - 1));
  const cv::Mat turn = cv::getRotationMatrix2D(middle, turn_rad * deg_per_rad, 1.0);
  cv::Mat result;
  cv::warpAffine(grey, result, turn, grey.size(), cv::INTER_CUBIC, cv::BORDER_REPLICATE);
  return result;
}

FlatPicture as_flat(const cv::Mat& grey, const cv::Mat& dark) {
  FlatPicture flat;
  flat.width = grey.cols;
  flat.height = grey.rows;
  const cv::Mat spool = largest_thing(dark);
  flat.grey.assign(grey.begin<float>(), grey.end<float>());
  flat.inside.assign(spool.begin<std::uint8_t>(), spool.end<std::uint8_t>());
  cv::Mat near_spool;
  cv::dilate(dark, near_spool, cv::Mat(), cv::Point(-1, -1), 6);
  cv::Scalar mean, spread;
  cv::meanStdDev(grey, mean, spread, near_spool == 0);
  // Uneven light that the parabola leaves is no noise: what neighbours differ by is.
  const cv::Mat left = grey.colRange(0, grey.cols - 6), right = grey.colRange(6, grey.cols);
  cv::Mat mask = near_spool.colRange(0, grey.cols - 6) == 0;
  mask &= near_spool.colRange(6, grey.cols) == 0;
  cv::meanStdDev(cv::Mat(right - left), cv::noArray(), spread, mask);
  flat.noise = spread[0] / std::numbers::sqrt2;
  flat.contrast = mean[0] - cv::mean(grey, spool)[0];
  return flat;
}

FlatPicture flat_of(const GreyPhoto& photo, double turn_rad, std::string& why) {
  // OpenCV takes what it only reads through the same pointer.
  const cv::Mat bytes(photo.height, photo.width, CV_8U, const_cast<std::uint8_t*>(photo.grey.data()));
  cv::Mat grey;
  bytes.convertTo(grey, CV_32F, 1.0 / 255.0);
  cv::GaussianBlur(grey, grey, cv::Size(0, 0), 1.0);
  grey = turned(grey, turn_rad);
  cv::Mat dark = darker(grey);
  if (const double ground = border_of_ground(dark); ground < least_border_of_ground) {
    why = fmt::format(
        "the ground is not lighter than the spool: {} of the picture's border are dark. Put a white board or "
        "a lamp "
        "with a screen behind the spool",
        percent_text(1.0 - ground, 0));
    return {};
  }
  for (int pass = 0; pass < 2; ++pass) {
    even_out(grey, dark);
    dark = darker(grey);
  }
  FlatPicture flat = as_flat(grey, dark);
  if (flat.contrast < least_contrast) {
    why = fmt::format(
        "the ground is hardly lighter than the spool, by {} of its brightness; {} are needed. Light the "
        "ground, "
        "not the spool",
        percent_text(flat.contrast, 0), percent_text(least_contrast, 0));
  }
  return flat;
}

}  // namespace

FlatPicture flattened(const GreyPhoto& photo, double turn_rad, std::string& why) {
  return by_opencv([&] { return flat_of(photo, turn_rad, why); });
}

}  // namespace laywright
