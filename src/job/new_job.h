// A new job beside an old one: the room carried along, the design changed.
#pragma once

#include <string>

namespace nook {

/// Why a folder cannot take the new job.
enum class NewJobRefused { no, same_folder, other_job };

/// Nothing that someone wrote is lost: neither the job itself nor another room's job is written
/// over.
NewJobRefused refused_by(const std::string& job, const std::string& folder);

/// The file of `folder` whose text would be lost under the new job: a design or pieces that differ
/// from what is to be written. Empty: none.
std::string lost_under(const std::string& job, const std::string& folder,
                       const std::string& design);

/// The text of a job's design.toml; empty where there is none.
std::string design_text(const std::string& job);

/// Makes the folder and writes each file whole: room.toml and pieces.toml byte for byte as in
/// `job`, design.toml as given. Throws std::system_error.
void write_job(const std::string& job, const std::string& folder, const std::string& design);

}  // namespace nook
