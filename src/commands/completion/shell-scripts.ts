/** Shells that completion knows. */
export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

/** Text as it stands, but for the backslash that keeps a shell's `${` apart from a template's. */
function script(text: TemplateStringsArray): string {
  return String.raw(text).replaceAll('\\$', '$');
}

/**
 * Scripts that ask the program itself what may follow: `completion reply -- WORD...` prints a suggestion a line, its help
 * after a tab, and `:files` where the shell shall offer files.
 */
export const SHELL_SCRIPTS: Readonly<Record<Shell, string>> = {
  // Bash splits words at = and : and replaces only what follows the last of them.
  bash: script`# ebbline completion for bash: source <(ebbline completion bash)
_ebbline() {
  local line reply head cut
  local -a words
  line=\${COMP_LINE:0:COMP_POINT}
  read -ra words <<<"$line"
  [[ $line == *[[:space:]] ]] && words+=("")
  cut=\${words[\${#words[@]}-1]}
  head=""
  [[ $cut == *[:=]* ]] && head=\${cut%"\${cut##*[:=]}"}
  COMPREPLY=()
  while IFS= read -r reply; do
    reply=\${reply%%$'\t'*}
    if [[ $reply == :files ]]; then
      while IFS= read -r reply; do COMPREPLY+=("$reply"); done < <(compgen -f -- "\${cut#"$head"}")
      compopt -o filenames 2>/dev/null
    else
      COMPREPLY+=("\${reply#"$head"}")
    fi
  done < <("$1" completion reply -- "\${words[@]:1}" 2>/dev/null)
}
complete -F _ebbline ebbline
`,
  zsh: script`#compdef ebbline
# ebbline completion for zsh: source <(ebbline completion zsh), or save it as _ebbline in a folder of $fpath
_ebbline() {
  local line files
  local -a names
  for line in "\${(@f)$("\${words[1]}" completion reply -- "\${(@)words[2,CURRENT]}" 2>/dev/null)}"; do
    case $line in
      :files*) files=1 ;;
      *$'\t'*) names+=("\${\${line%%$'\t'*}//:/\\:}:\${line#*$'\t'}") ;;
      ?*) names+=("\${line//:/\\:}") ;;
    esac
  done
  (( $#names )) && _describe 'ebbline' names
  [[ -n $files ]] && _files
}
if [[ $funcstack[1] == _ebbline ]]; then _ebbline "$@"; else compdef _ebbline ebbline; fi
`,
  fish: script`# ebbline completion for fish: ebbline completion fish | source
function __ebbline_reply
  set -l words (commandline -opc) (commandline -ct)
  command $words[1] completion reply -- $words[2..-1] 2>/dev/null
end
complete -c ebbline -f
complete -c ebbline -a '(__ebbline_reply | string match -v ":files*")'
complete -c ebbline -n '__ebbline_reply | string match -q ":files*"' -F
`,
};
