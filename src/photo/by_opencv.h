// How OpenCV is called: on the thread that calls, for threads of its own end the program where none can be started; and too little
// memory is std::bad_alloc, as everywhere else.
#pragma once

#include <new>

#include <opencv2/core.hpp>

namespace laywright {

template <typename Work>
auto by_opencv(Work&& work) {
  cv::setNumThreads(0);
  try {
    return work();
  } catch (const cv::Exception& trouble) {
    if (trouble.code == cv::Error::StsNoMem) throw std::bad_alloc();
    throw;
  }
}

}  // namespace laywright
