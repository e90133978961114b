#include "daemon/alerts/courier.hpp"

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <utility>

namespace tidewright::alerts {
namespace {

// A letter takes half a minute at most, and the first that fails ends its way.
constexpr std::chrono::minutes patience{5};

// A file in memory with that text, to be read from its beginning.
std::unique_ptr<Descriptor> in_memory(const std::string& text) {
  auto file = std::make_unique<Descriptor>(memfd_create("orders", MFD_CLOEXEC));
  for (std::size_t done = 0; done < text.size();) {
    const ssize_t count = write(file->number(), text.data() + done, text.size() - done);
    if (count <= 0) return nullptr;
    done += static_cast<std::size_t>(count);
  }
  if (lseek(file->number(), 0, SEEK_SET) != 0) return nullptr;
  return file;
}

// Nothing of ours is open in it: a socket to the broker that lived on there would hide our end.
pid_t start(const std::filesystem::path& program, int input, int output) {
  posix_spawn_file_actions_t files;
  posix_spawnattr_t how;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_adddup2(&files, input, STDIN_FILENO);
  posix_spawn_file_actions_adddup2(&files, output, STDOUT_FILENO);
  posix_spawn_file_actions_addclosefrom_np(&files, STDERR_FILENO + 1);
  posix_spawnattr_init(&how);
  sigset_t none;
  sigemptyset(&none);
  posix_spawnattr_setsigmask(&how, &none);
  sigset_t stopping;
  sigemptyset(&stopping);
  for (const int signal : {SIGTERM, SIGINT, SIGPIPE}) sigaddset(&stopping, signal);
  posix_spawnattr_setsigdefault(&how, &stopping);
  posix_spawnattr_setflags(&how, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);

  std::string name = program.string();
  std::array<char*, 2> words{name.data(), nullptr};
  pid_t process = 0;
  const int failed = posix_spawn(&process, name.c_str(), &files, &how, words.data(), environ);
  posix_spawnattr_destroy(&how);
  posix_spawn_file_actions_destroy(&files);
  return failed != 0 ? 0 : process;
}

}  // namespace

Courier::Courier(std::filesystem::path program) : program_(std::move(program)) {}

bool Courier::send(const post::Orders& orders) {
  const auto input = in_memory(post::to_text(orders));
  std::array<int, 2> ends{-1, -1};
  if (!input || pipe2(ends.data(), O_CLOEXEC) != 0) return false;
  auto answers = std::make_unique<Descriptor>(ends[0]);
  const Descriptor output(ends[1]);
  if (fcntl(answers->number(), F_SETFL, O_NONBLOCK) != 0) return false;
  process_ = start(program_, input->number(), output.number());
  if (process_ == 0) return false;
  answers_ = std::move(answers);
  heard_.clear();
  sent_ = Steady::now();
  return true;
}

std::vector<post::Outcome> Courier::hear() {
  std::vector<post::Outcome> outcomes;
  if (!under_way()) return outcomes;
  if (Steady::now() > sent_ + patience) kill(process_, SIGKILL);
  // Whether it is back is asked first: then all that it told is in the pipe.
  const bool back = waitpid(process_, nullptr, WNOHANG) != 0;
  std::array<char, 4096> bytes{};
  for (ssize_t count = 0; (count = read(answers_->number(), bytes.data(), bytes.size())) > 0;) {
    heard_.append(bytes.data(), static_cast<std::size_t>(count));
  }
  for (std::size_t end = 0; (end = heard_.find('\n')) != heard_.npos;) {
    if (auto outcome = post::outcome_of(heard_.substr(0, end))) outcomes.push_back(*outcome);
    heard_.erase(0, end + 1);
  }
  if (back) {
    process_ = 0;
    answers_.reset();
  }
  return outcomes;
}

std::filesystem::path courier_beside_us() {
  std::error_code error;
  return std::filesystem::read_symlink("/proc/self/exe", error).parent_path() /
         "tidewright-courier";
}

}  // namespace tidewright::alerts
