// One whole file after the other.
#include "command/sheet_folder.h"

#include "job/whole_file.h"
#include "sheet/folder.h"

namespace nook {

void put_into(const std::string& folder, const std::vector<SheetFile>& files) {
  make_folder(folder);
  for (const SheetFile& file : files) write_whole(folder + "/" + file.name, file.bytes);
}

}  // namespace nook
