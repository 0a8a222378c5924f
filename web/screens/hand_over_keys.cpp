// The sentences of the hand-over: its screen, its sheet of paper, links that cannot be opened.
#include "web/screens/interface_keys.h"

namespace rehale::screens {

namespace {

constexpr const char* k_hand_keys[] = {"hand/ask",
                                       "hand/title",
                                       "hand/lead",
                                       "hand/qr",
                                       "hand/no-qr",
                                       "hand/copy",
                                       "hand/copied",
                                       "hand/save",
                                       "hand/saved",
                                       "hand/print",
                                       "hand/printed",
                                       "hand/not-done",
                                       "hand/spell",
                                       "hand/spell-how",
                                       "hand/limits",
                                       "hand/private",
                                       "hand/handed",
                                       "hand/made-up",
                                       "hand/own",
                                       "sheet/title",
                                       "sheet/facts",
                                       "sheet/self-reported",
                                       "sheet/label",
                                       "sheet/mend",
                                       "sheet/well",
                                       "sheet/teach",
                                       "sheet/script/1",
                                       "sheet/script/2",
                                       "sheet/ticks/1",
                                       "sheet/ticks/2",
                                       "sheet/ticks/3",
                                       "sheet/ticks/4",
                                       "sheet/question",
                                       "sheet/care",
                                       "sheet/cautions/1",
                                       "sheet/cautions/2",
                                       "sheet/foot",
                                       "trouble/link/title",
                                       "trouble/link/lead",
                                       "trouble/link-newer/title",
                                       "trouble/link-newer/lead",
                                       "trouble/link-other/title",
                                       "trouble/link-other/lead"};

}  // namespace

std::span<const char* const> hand_over_keys() { return k_hand_keys; }

}  // namespace rehale::screens
