// A file system of its own of a few kilobytes, mounted where a test wants a disk that can be full
// or read-only. Needs root: mounted() says whether it could be had.
#pragma once

#include <sys/mount.h>

#include <filesystem>
#include <string>
#include <utility>

namespace tidewright::support {

class SmallDisk {
 public:
  SmallDisk(std::filesystem::path at, int kilobytes) : path_(std::move(at)) {
    const std::string size = "size=" + std::to_string(kilobytes) + "k";
    mounted_ = mount("tmpfs", path_.c_str(), "tmpfs", 0, size.c_str()) == 0;
  }
  ~SmallDisk() { umount2(path_.c_str(), MNT_DETACH); }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;

  bool mounted() const { return mounted_; }
  const std::filesystem::path& path() const { return path_; }
  bool remount(unsigned long flags) {
    return mount("tmpfs", path_.c_str(), "tmpfs", MS_REMOUNT | flags, nullptr) == 0;
  }

 private:
  std::filesystem::path path_;
  bool mounted_ = false;
};

}  // namespace tidewright::support
